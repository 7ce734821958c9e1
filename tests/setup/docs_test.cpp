// SPDX-License-Identifier: MIT
#include "core/base/format.h"
#include "core/setup/fields.h"
#include "core/setup/wording.h"
#include "tests/setup/page_table.h"
#include "tests/setup/setup_text.h"

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

// The page's tables are made from the field table. After changing a field, run this test once with
// STILLBAY_UPDATE_DOCS=1 in the environment: it then writes the page instead of comparing it.
TEST(SetupFilePage, TablesAreThoseOfTheFieldTable)
{
    const std::string written = test::readFile(kPage);
    std::string page = written;
    test::putTable(page, "fields: Part", table<Part>());
    test::putTable(page, "fields: ArmSection", table<ArmSection>());
    test::putTable(page, "fields: Arm", table<Arm>());
    test::putTable(page, "fields: Drive", table<Drive>());
    test::putTable(page, "fields: Motor", table<Motor>());
    test::putTable(page, "fields: Propeller", table<Propeller>());
    test::putTable(page, "fields: Battery", table<Battery>());
    test::putTable(page, "fields: Bay", table<Bay>());
    test::putTable(page, "fields: Camera", table<Camera>());
    test::putTable(page, "fields: TubeKind", table<TubeKind>());
    test::putTable(page, "fields: Mounts", table<Mounts>());
    test::putTable(page, "fields: MountPoint", table<MountPoint>());
    test::putTable(page, "fields: Flight", table<Flight>());
    test::putTable(page, "fields: FlightNote", table<FlightNote>());
    test::putTable(page, "fields: Limits", table<Limits>());
    test::putTable(page, "fields: Source", table<Source>());
    test::putTable(page, "fields: NamedRecording", table<NamedRecording>());
    test::putTable(page, "fields: Design", table<Design>());
    test::expectPage(kPage, written, page);
}

}  // namespace
}  // namespace stillbay
