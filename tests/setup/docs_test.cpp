// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/setup/fields.h"
#include "core/setup/wording.h"
#include "tests/setup/setup_text.h"

#include <cstdlib>

namespace stillbay {
namespace {

const std::filesystem::path kPage = std::filesystem::path(STILLBAY_DOCS_DIR) / "setup-file.md";

/// How a member's value and its range read in the table.
struct Cell {
    std::string allowed;
    std::string fallback;
};

std::string listed(const auto& numbers)
{
    std::string text;
    for (const double number : numbers)
        text += (text.empty() ? "" : ", ") + toText(number);
    return text;
}

template <class T>
Cell describeCell(const T& value, const std::string& range)
{
    if constexpr (std::is_same_v<T, int>)
        return {"whole, " + range, toText(value)};
    else if constexpr (std::is_same_v<T, double>)
        return {range, toText(value)};
    else if constexpr (std::is_same_v<T, std::optional<double>>)
        return {range + ", or null", "null"};
    else if constexpr (std::is_same_v<T, std::vector<double>>)
        return {"list, each " + range, listed(value)};
    else if constexpr (std::is_same_v<T, std::array<double, 2>>)
        return {"2 numbers, each " + range, listed(value)};
    else
        return {"3 numbers, each " + range, "none"};
}

template <class Owner>
std::string table()
{
    static const Owner owner;
    std::string text =
        "| key | unit | allowed | default | meaning |\n"
        "| --- | --- | --- | --- | --- |\n";
    for (const Field<Owner>& field : fieldsOf<Owner>()) {
        const Cell cell = std::visit(
            [&](auto member) {
                return describeCell(owner.*member, english(rangeText(field.min, field.max, "")));
            },
            field.member);
        const bool required = field.presence == Presence::Required;
        text += std::string("| `") + field.key + "` | " + field.unit + " | " + cell.allowed +
                " | " + (required ? "required" : cell.fallback) + " | **" + field.label + ".** " +
                field.meaning + " |\n";
    }
    return text;
}

/// Replaces what stands between a struct's markers.
void putTable(std::string& page, const std::string& name, const std::string& table)
{
    const std::string begin = "<!-- fields: " + name + " -->\n";
    const std::size_t from = page.find(begin);
    ASSERT_NE(from, std::string::npos) << "no marker " << begin;
    const std::size_t start = from + begin.size();
    const std::size_t end = page.find("<!-- end -->", start);
    ASSERT_NE(end, std::string::npos) << "no end after " << begin;
    page.replace(start, end - start, table);
}

// The page's tables are made from the field table. After changing a field, run this test once with
// STILLBAY_UPDATE_DOCS=1 in the environment: it then writes the page instead of comparing it.
TEST(SetupFilePage, TablesAreThoseOfTheFieldTable)
{
    const std::string written = test::readFile(kPage);
    std::string page = written;
    putTable(page, "Part", table<Part>());
    putTable(page, "ArmSection", table<ArmSection>());
    putTable(page, "Arm", table<Arm>());
    putTable(page, "Drive", table<Drive>());
    putTable(page, "Motor", table<Motor>());
    putTable(page, "Propeller", table<Propeller>());
    putTable(page, "Battery", table<Battery>());
    putTable(page, "Bay", table<Bay>());
    putTable(page, "Camera", table<Camera>());
    putTable(page, "TubeKind", table<TubeKind>());
    putTable(page, "Mounts", table<Mounts>());
    putTable(page, "MountPoint", table<MountPoint>());
    putTable(page, "Flight", table<Flight>());
    putTable(page, "Limits", table<Limits>());
    putTable(page, "Source", table<Source>());
    putTable(page, "Design", table<Design>());
    if (std::getenv("STILLBAY_UPDATE_DOCS"))
        std::ofstream(kPage, std::ios::binary) << page;
    else
        EXPECT_TRUE(page == written)
            << kPage << " is out of date: run this test with STILLBAY_UPDATE_DOCS=1";
}

}  // namespace
}  // namespace stillbay
