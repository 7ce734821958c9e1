// SPDX-License-Identifier: MIT
#include "app/commands/command.h"

#include "core/base/printable.h"
#include "core/setup/size_limit.h"

#include <array>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

namespace stillbay {
namespace {

constexpr double kMostPoints = 20001;

std::string reasonOf(int number)
{
    return std::generic_category().message(number);
}

std::string nameOf(std::string_view file)
{
    return file == kStandardInput ? "standard input" : printable(file);
}

}  // namespace

int reportError(std::ostream& err, const Error& error, std::string_view file)
{
    err << "stillbay: " << printable(english(error.what)) << ": " << nameOf(file);
    if (const std::string where = printable(english(whereText(error))); !where.empty())
        err << ", " << where;
    err << '\n';
    return error.code == Errc::BadInput ? kExitBadInput : kExitNoAnswer;
}

void reportWarnings(std::ostream& err, const std::vector<Warning>& warnings, std::string_view file)
{
    for (const Warning& warning : warnings)
        err << "stillbay: " << printable(english(warning.text)) << ": " << nameOf(file) << '\n';
}

int usageError(std::ostream& err, std::string_view what, std::string_view where)
{
    err << "stillbay: " << printable(what) << ": " << printable(where) << '\n';
    return kExitUsage;
}

int print(std::ostream& out, std::string_view text, std::ostream& err)
{
    errno = 0;
    if (out << printablePage(text) << std::flush)
        return kExitDone;
    const std::string why = errno == 0 ? std::string() : ": " + reasonOf(errno);
    err << "stillbay: cannot be written" << why << ": standard output\n";
    return kExitBadInput;
}

bool isThere(const std::string& path)
{
    std::error_code code;
    return std::filesystem::exists(std::filesystem::symlink_status(path, code));
}

Error alreadyThere()
{
    return {Errc::BadInput, phrase("is there already, --force replaces it"), {}};
}

Result<LoadedSetup> loadSetup(const std::string& path)
{
    std::error_code code;
    if (std::filesystem::is_directory(path, code))
        return fail(Errc::BadInput, phrase("is a folder, not a setup file"));
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> opened(
        path == kStandardInput ? nullptr : std::fopen(path.c_str(), "rb"), std::fclose);
    std::FILE* const file = path == kStandardInput ? stdin : opened.get();
    if (!file)
        return fail(Errc::BadInput, phrase("cannot be opened: %1", reasonOf(errno)));
    // What is too large is refused below; an endless pipe must not be waited for.
    std::string text;
    std::array<char, 1U << 16U> part{};
    std::size_t count = part.size();
    while (count == part.size() && text.size() <= kMaxSetupBytes) {
        count = std::fread(part.data(), 1, part.size(), file);
        text.append(part.data(), count);
    }
    if (std::ferror(file) != 0)
        return fail(Errc::BadInput, phrase("cannot be read: %1", reasonOf(errno)));
    return readSetup(text);
}

std::optional<std::vector<double>> parseNumbers(std::string_view text, std::size_t count,
                                                Percent percent)
{
    std::vector<double> values(count);
    for (std::size_t i = 0; i < count; ++i) {
        const auto [end, error] =
            std::from_chars(text.data(), text.data() + text.size(), values[i]);
        if (error != std::errc() || !std::isfinite(values[i]))
            return std::nullopt;
        text.remove_prefix(static_cast<std::size_t>(end - text.data()));
        if (percent == Percent::Allowed && text.starts_with('%')) {
            values[i] /= 100;
            text.remove_prefix(1);
        }
        const bool isLast = i + 1 == count;
        if (isLast ? !text.empty() : !text.starts_with(':'))
            return std::nullopt;
        if (!isLast)
            text.remove_prefix(1);
    }
    return values;
}

std::optional<Grid> parseGrid(std::string_view text, double low, double high, Percent percent)
{
    const auto values = parseNumbers(text, 3, percent);
    if (!values)
        return std::nullopt;
    const double from = (*values)[0], to = (*values)[1], step = (*values)[2];
    if (!(from >= low && from <= to && to <= high && step > 0) ||
        !((to - from) / step < kMostPoints))
        return std::nullopt;
    return Grid{from, to, step};
}

}  // namespace stillbay
