// SPDX-License-Identifier: MIT
#include "core/recording/table_reader.h"

#include "core/base/check.h"
#include "core/recording/row_reader.h"

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <span>
#include <string_view>

namespace stillbay {
namespace {

Result<void> checkColumns(const ReadPlan& plan)
{
    bool isAnyUsed = false;
    for (std::size_t c = 0; c < plan.columns.size(); ++c)
        isAnyUsed |= plan.columns[c].isUsed && c != plan.timeColumn;
    if (!isAnyUsed)
        return fail(Errc::BadInput, phrase("no column of the recording is in use"));
    check(!plan.timeColumn || *plan.timeColumn < plan.columns.size(), "a column of the plan");
    return {};
}

std::size_t columnsUsed(const ReadPlan& plan)
{
    std::size_t count = 0;
    for (std::size_t c = 0; c < plan.columns.size(); ++c)
        count += plan.columns[c].isUsed || c == plan.timeColumn ? 1 : 0;
    return count;
}

Error tooManyValues(std::size_t line, std::size_t columns, std::size_t most)
{
    return {Errc::BadInput,
            phrase("the %1 columns in use have more than %2 values together: leave out columns, or "
                   "cut the recording",
                   whole(columns), whole(most)),
            {},
            TextPlace{line, 1}};
}

constexpr std::size_t kBlock = std::size_t{1} << 18;       // bytes read at once
constexpr std::size_t kLongestRow = std::size_t{1} << 24;  // bytes

// Of a byte-order mark's three, none other begins a text.
constexpr std::string_view kMark = "\xEF\xBB\xBF";

}  // namespace

std::size_t RawTable::lineOf(std::size_t row) const
{
    const auto after =
        std::upper_bound(lines.begin(), lines.end(), row,
                         [](std::size_t r, const auto& place) { return r < place.first; });
    check(after != lines.begin(), "a row of the table");
    const auto& [firstRow, line] = *(after - 1);
    return line + (row - firstRow);
}

Result<RawTable> readTable(const ByteSource& bytes, const ReadPlan& plan,
                           const std::stop_token& stop, const Progress& progress, std::size_t most)
{
    if (const auto used = checkColumns(plan); !used)
        return tl::unexpected(used.error());
    const auto total = static_cast<std::size_t>(bytes.size());
    const std::size_t guess = total / std::max<std::size_t>(1, plan.bytesOfRow) * 21 / 20 + 16;
    RowReader reader(plan, std::min(guess, most / columnsUsed(plan) + 16));
    std::vector<char> buffer(std::min(kBlock, total + 1));  // and one byte to see the end
    std::size_t kept = 0;  // bytes at the buffer's beginning, of an unfinished row
    std::uint64_t offset = 0;
    for (bool isLast = false; !isLast;) {
        if (stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        if (kept == buffer.size()) {
            if (buffer.size() >= kLongestRow)
                return tl::unexpected(Error{Errc::BadInput,
                                            phrase("line %1 has no end", whole(reader.line())),
                                            {},
                                            TextPlace{reader.line(), 1}});
            buffer.resize(2 * buffer.size());
        }
        const Result<std::size_t> got = bytes.read(offset, std::span(buffer).subspan(kept));
        if (!got)
            return tl::unexpected(got.error());
        std::span<char> block = std::span(buffer).first(kept + *got);
        if (offset == 0 && std::string_view(block.data(), block.size()).starts_with(kMark))
            std::fill_n(block.begin(), kMark.size(), ' ');
        offset += *got;
        isLast = kept + *got < buffer.size();
        const std::size_t done = reader.read(block, isLast);
        if (reader.rows() > most / columnsUsed(plan))
            return tl::unexpected(tooManyValues(reader.line(), columnsUsed(plan), most));
        kept = block.size() - done;
        std::memmove(buffer.data(), buffer.data() + done, kept);
        if (progress)
            progress(std::min(static_cast<std::size_t>(offset), total), total);
    }
    RawTable table = reader.finish();
    if (table.rows() < 2)
        return fail(Errc::BadInput, table.rows() == 0
                                        ? phrase("the recording has no row of numbers")
                                        : phrase("the recording has one row only"));
    return table;
}

}  // namespace stillbay
