// SPDX-License-Identifier: MIT
#include "core/clip/row_grid.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace stillbay {
namespace {

constexpr std::size_t kFewestInFrame = 6;
constexpr double kLongestGap = 3.5;  // frames; a duplicate left out is no gap

constexpr double kRounding = 0.6e-3;  // [s] of stamps in whole milliseconds

using FrameBands = std::span<const BandShift>;

double weightOf(double spread)
{
    return std::isfinite(spread) && spread > 0 ? 1 / (spread * spread) : 0.0;
}

bool isSeen(const BandShift& band)
{
    return std::isfinite(band.across_px) && std::isfinite(band.up_px) &&
           std::isfinite(band.roll_rad) && weightOf(band.acrossSpread_px) > 0 &&
           weightOf(band.upSpread_px) > 0;
}

// The bands of each frame that has enough of them.
Result<std::vector<FrameBands>> framesOf(const std::vector<BandShift>& bands)
{
    std::vector<FrameBands> frames;
    for (auto from = bands.begin(); from != bands.end();) {
        const auto to = std::find_if(from, bands.end(), [&](const BandShift& b) {
            return b.frameTime_s != from->frameTime_s;
        });
        if (!std::isfinite(from->frameTime_s) ||
            (!frames.empty() && from->frameTime_s < frames.back().front().frameTime_s))
            return fail(Errc::BadInput, phrase("the times of the frames do not rise"));
        if (!std::is_sorted(from, to,
                            [](const BandShift& a, const BandShift& b) { return a.row < b.row; }))
            return fail(Errc::BadInput, phrase("the rows of a frame do not rise"));
        if (std::count_if(from, to, isSeen) >= static_cast<std::ptrdiff_t>(kFewestInFrame))
            frames.emplace_back(from, to);
        from = to;
    }
    return frames;
}

// Frames that follow each other against one reference; shorter ones are left out.
std::vector<std::span<const FrameBands>> runsOf(const std::vector<FrameBands>& frames,
                                                double longest)
{
    std::vector<std::span<const FrameBands>> runs;
    for (std::size_t from = 0; from < frames.size();) {
        std::size_t to = from + 1;
        while (to < frames.size() &&
               frames[to].front().reference == frames[from].front().reference &&
               frames[to].front().frameTime_s - frames[to - 1].front().frameTime_s <= longest)
            ++to;
        if (to - from >= kFramesAtOnce)
            runs.push_back(std::span(frames).subspan(from, to - from));
        from = to;
    }
    return runs;
}

std::vector<double> rowsOf(const std::vector<BandShift>& bands)
{
    std::vector<double> rows;
    rows.reserve(bands.size());
    for (const BandShift& band : bands)
        if (std::isfinite(band.row))
            rows.push_back(band.row);
    std::sort(rows.begin(), rows.end());
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    return rows;
}

void fill(RowGrid& grid, std::size_t frame, FrameBands bands)
{
    for (const BandShift& band : bands) {
        if (!isSeen(band))
            continue;
        const auto at = std::lower_bound(grid.row.begin(), grid.row.end(), band.row);
        const std::size_t k = frame * grid.rows() + static_cast<std::size_t>(at - grid.row.begin());
        grid.value[kAcross][k] = band.across_px;
        grid.value[kUp][k] = band.up_px;
        grid.value[kRoll][k] = band.roll_rad * grid.height_px;
        grid.weight[kAcross][k] = weightOf(band.acrossSpread_px);
        grid.weight[kUp][k] = weightOf(band.upSpread_px);
        grid.weight[kRoll][k] = weightOf(band.rollSpread_rad * grid.height_px);
    }
}

// Frames come evenly unless their stamps say otherwise by more than rounding: then their true rate
// is that of all of them, and each stamp is only rounded.
void straightenTimes(RowGrid& grid)
{
    const std::size_t count = grid.frames();
    std::vector<double> number(count, 0.0);
    for (std::size_t n = 1; n < count; ++n)
        number[n] = number[n - 1] + std::round((grid.time[n] - grid.time[n - 1]) * grid.rate_hz);
    double meanNumber = 0, meanTime = 0, square = 0, product = 0;
    for (std::size_t n = 0; n < count; ++n) {
        meanNumber += number[n] / static_cast<double>(count);
        meanTime += grid.time[n] / static_cast<double>(count);
    }
    for (std::size_t n = 0; n < count; ++n) {
        square += (number[n] - meanNumber) * (number[n] - meanNumber);
        product += (number[n] - meanNumber) * (grid.time[n] - meanTime);
    }
    if (square <= 0 || product <= 0)
        return;
    const double step = product / square;
    double worst = 0;
    for (std::size_t n = 0; n < count; ++n)
        worst =
            std::max(worst, std::abs(meanTime + step * (number[n] - meanNumber) - grid.time[n]));
    grid.rate_hz = 1 / step;
    if (worst > kRounding)
        return;
    for (std::size_t n = 0; n < count; ++n)
        grid.time[n] = meanTime + step * (number[n] - meanNumber);
}

}  // namespace

Result<RowGrid> rowGrid(const RowShifts& shifts)
{
    const auto frames = framesOf(shifts.bands);
    if (!frames)
        return tl::unexpected(frames.error());
    RowGrid grid{.width_px = static_cast<double>(shifts.width),
                 .height_px = static_cast<double>(shifts.height),
                 .bandHeight = shifts.bandHeight,
                 .rate_hz = shifts.frameRate_hz};
    const auto runs = grid.rate_hz > 0 ? runsOf(*frames, kLongestGap / grid.rate_hz)
                                       : std::vector<std::span<const FrameBands>>{};
    if (runs.empty())
        return fail(Errc::NoAnswer,
                    phrase("no %1 usable frames follow each other", whole(kFramesAtOnce)));
    grid.row = rowsOf(shifts.bands);
    std::size_t count = 0, references = 0;
    for (const auto& run : runs)
        count += run.size();
    for (std::size_t axis = 0; axis < 3; ++axis) {
        grid.value[axis].assign(count * grid.rows(), 0.0);
        grid.weight[axis].assign(count * grid.rows(), 0.0);
    }
    const double middle =
        (runs.front().front().front().frameTime_s + runs.back().back().front().frameTime_s) / 2;
    for (std::size_t r = 0; r < runs.size(); ++r) {
        if (r == 0 || runs[r].front().front().reference != runs[r - 1].front().front().reference)
            ++references;
        for (const FrameBands& bands : runs[r]) {
            fill(grid, grid.frames(), bands);
            grid.time.push_back(bands.front().frameTime_s - middle);
            grid.run.push_back(r);
            grid.reference.push_back(references - 1);
        }
    }
    straightenTimes(grid);
    return grid;
}

}  // namespace stillbay
