// SPDX-License-Identifier: MIT
#include "core/clip/reference_picture.h"

#include "core/clip/spline_plane.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stillbay {

namespace {

constexpr std::size_t kRun = 32;

using Run = std::array<float, kRun>;

// Short ones at both edges: a run that reaches beyond a frame is lost as a whole.
std::size_t runLength(std::size_t x, std::size_t width)
{
    const std::size_t edge = std::min<std::size_t>(4, width);
    if (x == 0 || x + edge >= width)
        return std::min(edge, width - x);
    return std::min(kRun, width - edge - x);
}

// How many lines from either edge are for the most part not seen.
std::size_t edgeOf(const std::vector<std::size_t>& unseen, std::size_t length)
{
    std::size_t edge = 0;
    for (std::size_t k = 0; k < unseen.size() / 2; ++k)
        if (2 * std::max(unseen[k], unseen[unseen.size() - 1 - k]) > length)
            edge = k + 1;
    return edge;
}

// Where the frame shows what the picture has at this row, `x` from the middle.
RowMotion motionFrom(const RowField& field, double row, double x)
{
    RowMotion motion;
    for (int round = 0; round < 3; ++round)
        motion = motionAt(field, row + motion.down + motion.tilt * x);
    return motion;
}

// Each column of the runs put in order, the smallest first.
void sortColumns(std::vector<Run>& runs)
{
    for (std::size_t end = runs.size(); end > 1; --end)
        for (std::size_t k = 0; k + 1 < end; ++k)
            for (std::size_t x = 0; x < kRun; ++x) {
                const float a = runs[k][x], b = runs[k + 1][x];
                runs[k][x] = std::min(a, b);
                runs[k + 1][x] = std::max(a, b);
            }
}

}  // namespace

ReferencePicture referenceOf(std::vector<Plane> levels)
{
    ReferencePicture reference;
    for (const Plane& level : levels)
        reference.splines.push_back(splineOf(level));
    reference.levels = std::move(levels);
    return reference;
}

TileReference levelOf(const ReferencePicture& reference, std::size_t level)
{
    const double scale = std::ldexp(1.0, -static_cast<int>(level));
    // Halving spreads what lies beyond the edge by a pixel and a half.
    const double spread = reference.sides + reference.ends > 0 ? 1.5 : 0.0;
    return {reference.splines[level], scale * static_cast<double>(reference.sides) + spread,
            scale * static_cast<double>(reference.ends) + spread};
}

MeanPicture meanPicture(std::span<const Plane* const> frames, std::span<const RowField> fields,
                        std::span<const double> gains)
{
    const std::size_t width = frames.front()->width, height = frames.front()->height;
    RowField middle(height);
    for (const RowField& field : fields)
        for (std::size_t y = 0; y < height; ++y)
            middle[y] += (1.0 / static_cast<double>(fields.size())) * field[y];
    std::vector<Plane> splines;
    std::vector<RowField> own(fields.begin(), fields.end());
    for (std::size_t k = 0; k < frames.size(); ++k) {
        splines.push_back(splineOf(*frames[k]));
        for (std::size_t y = 0; y < height; ++y)
            own[k][y] += -1.0 * middle[y];
    }

    MeanPicture mean{.plane = Plane(width, height)};
    std::vector<std::size_t> unseenInRow(height), unseenInColumn(width);
    Plane& picture = mean.plane;
    std::vector<Run> runs;
    for (std::size_t y = 0; y < height; ++y)
        for (std::size_t x = 0, count = 0; x < width; x += count) {
            count = runLength(x, width);
            const double place = fromMiddle(x, width) + 0.5 * static_cast<double>(count - 1);
            runs.clear();
            for (std::size_t k = 0; k < frames.size(); ++k) {
                const RowMotion motion = motionFrom(own[k], static_cast<double>(y), place);
                Run run{};
                if (!sampleRun(splines[k],
                               static_cast<double>(x) + motion.right + motion.stretch * place,
                               static_cast<double>(y) + motion.down + motion.tilt * place, count,
                               {run.data(), nullptr, nullptr}))
                    continue;
                const auto scale = static_cast<float>(1.0 / gains[k]);
                for (float& value : run)
                    value *= scale;
                runs.push_back(run);
            }
            if (2 * runs.size() < frames.size()) {
                unseenInRow[y] += count;
                for (std::size_t c = x; c < x + count; ++c)
                    ++unseenInColumn[c];
            }
            if (runs.empty()) {
                std::copy_n(frames[frames.size() / 2]->row(y) + x, count, picture.row(y) + x);
                continue;
            }
            sortColumns(runs);
            const std::size_t skipped = runs.size() / 4;
            const std::size_t kept = runs.size() - 2 * skipped;
            for (std::size_t c = 0; c < count; ++c) {
                float sum = 0.0F;
                for (std::size_t k = skipped; k < skipped + kept; ++k)
                    sum += runs[k][c];
                picture.row(y)[x + c] = sum / static_cast<float>(kept);
            }
        }
    mean.ends = edgeOf(unseenInRow, width);
    mean.sides = edgeOf(unseenInColumn, height);
    return mean;
}

}  // namespace stillbay
