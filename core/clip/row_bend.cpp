// SPDX-License-Identifier: MIT
#include "core/clip/row_bend.h"

#include <cmath>
#include <cstddef>
#include <map>
#include <span>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kFewestBentBands = 3;

// Takes a + b·row out of one axis by least squares, each band by how well it is known.
template <class Value, class Spread>
std::vector<double> straightened(std::span<const BandShift> bands, Value value, Spread spread)
{
    double w = 0, wr = 0, wrr = 0, wv = 0, wrv = 0;
    for (const BandShift& band : bands) {
        const double weight = 1.0 / (spread(band) * spread(band));
        w += weight;
        wr += weight * band.row;
        wrr += weight * band.row * band.row;
        wv += weight * value(band);
        wrv += weight * band.row * value(band);
    }
    const double determinant = w * wrr - wr * wr;
    const double skew = determinant > 0 ? (w * wrv - wr * wv) / determinant : 0.0;
    const double shift = (wv - skew * wr) / w;
    std::vector<double> rest;
    for (const BandShift& band : bands)
        rest.push_back(value(band) - shift - skew * band.row);
    return rest;
}

struct RowMean {
    double across = 0, up = 0;
    std::size_t count = 0;
};

}  // namespace

std::vector<FrameBend> rowBends(const RowShifts& shifts)
{
    std::vector<FrameBend> frames;
    std::vector<unsigned> references;
    std::map<std::pair<unsigned, double>, RowMean> means;  // by reference and row
    for (std::size_t from = 0, to = 0; from < shifts.bands.size(); from = to) {
        while (to < shifts.bands.size() && shifts.bands[to].frame == shifts.bands[from].frame)
            ++to;
        if (to - from < kFewestBentBands)
            continue;
        const std::span<const BandShift> bands(&shifts.bands[from], to - from);
        const auto across = straightened(
            bands, [](const BandShift& b) { return b.across_px; },
            [](const BandShift& b) { return b.acrossSpread_px; });
        const auto up = straightened(
            bands, [](const BandShift& b) { return b.up_px; },
            [](const BandShift& b) { return b.upSpread_px; });
        FrameBend frame{bands.front().frame, bands.front().frameTime_s, {}, 0.0};
        for (std::size_t k = 0; k < bands.size(); ++k) {
            frame.rows.push_back({bands[k].row, across[k], up[k]});
            RowMean& mean = means[{bands[k].reference, bands[k].row}];
            mean.across += across[k];
            mean.up += up[k];
            ++mean.count;
        }
        frames.push_back(std::move(frame));
        references.push_back(bands.front().reference);
    }
    for (std::size_t f = 0; f < frames.size(); ++f) {
        double power = 0;
        for (RowBend& row : frames[f].rows) {
            const RowMean& mean = means[{references[f], row.row}];
            row.across_px -= mean.across / static_cast<double>(mean.count);
            row.up_px -= mean.up / static_cast<double>(mean.count);
            power += row.across_px * row.across_px + row.up_px * row.up_px;
        }
        frames[f].rms_px = std::sqrt(power / static_cast<double>(frames[f].rows.size()));
    }
    return frames;
}

}  // namespace stillbay
