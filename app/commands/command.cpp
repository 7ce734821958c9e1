// SPDX-License-Identifier: MIT
#include "app/commands/command.h"

#include <charconv>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace stillbay {
namespace {

constexpr double kMostPoints = 20001;

}  // namespace

int reportError(std::ostream& err, const Error& error, std::string_view file)
{
    err << "stillbay: " << english(error.what) << ": " << file;
    if (const std::string where = english(whereInWords(error)); !where.empty())
        err << ", " << where;
    err << '\n';
    return error.code == Errc::BadInput ? kExitBadInput : kExitNoAnswer;
}

void reportWarnings(std::ostream& err, const std::vector<Warning>& warnings, std::string_view file)
{
    for (const Warning& warning : warnings)
        err << "stillbay: " << english(warning.text) << ": " << file << '\n';
}

int usageError(std::ostream& err, std::string_view what, std::string_view where)
{
    err << "stillbay: " << what << ": " << where << '\n';
    return kExitUsage;
}

Result<LoadedSetup> loadSetup(const std::string& path)
{
    std::error_code code;
    if (std::filesystem::is_directory(path, code))
        return fail(Errc::BadInput, phrase("is a folder, not a setup file"));
    std::ifstream file(path, std::ios::binary);
    if (!file)
        return fail(Errc::BadInput, phrase("cannot be opened"));
    std::ostringstream text;
    text << file.rdbuf();
    if (file.bad())
        return fail(Errc::BadInput, phrase("cannot be read"));
    return readSetup(text.str());
}

std::optional<std::vector<double>> parseNumbers(std::string_view text, std::size_t count)
{
    std::vector<double> values(count);
    for (std::size_t i = 0; i < count; ++i) {
        const auto [end, error] =
            std::from_chars(text.data(), text.data() + text.size(), values[i]);
        if (error != std::errc() || !std::isfinite(values[i]))
            return std::nullopt;
        text.remove_prefix(static_cast<std::size_t>(end - text.data()));
        const bool isLast = i + 1 == count;
        if (isLast ? !text.empty() : !text.starts_with(':'))
            return std::nullopt;
        if (!isLast)
            text.remove_prefix(1);
    }
    return values;
}

std::optional<Grid> parseGrid(std::string_view text, double low, double high)
{
    const auto values = parseNumbers(text, 3);
    if (!values)
        return std::nullopt;
    const double from = (*values)[0], to = (*values)[1], step = (*values)[2];
    if (!(from >= low && from <= to && to <= high && step > 0) ||
        !((to - from) / step < kMostPoints))
        return std::nullopt;
    return Grid{from, to, step};
}

}  // namespace stillbay
