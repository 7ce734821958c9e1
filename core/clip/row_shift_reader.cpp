// SPDX-License-Identifier: MIT
#include "core/clip/row_shift_reader.h"

#include "core/base/check.h"
#include "core/base/quantile.h"
#include "core/clip/wider_spreads.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay {

namespace {

Phrase tooSmall()
{
    return phrase("the picture is too small");
}

Phrase tooDark()
{
    return phrase("the picture is too dark or fades");
}

Phrase tooFast()
{
    return phrase("the picture moves too fast");
}

Phrase tooFewAlike()
{
    return phrase("too few frames show the same");
}

Phrase tooPlain()
{
    return phrase("the picture has too little to hold on to");
}

Phrase aJump()
{
    return phrase("the picture jumps");
}

Phrase tooShort()
{
    return phrase("the film has too few frames");
}

constexpr std::size_t kInReference = 12;
constexpr std::size_t kFewest = 4;     // frames that make a reference
constexpr std::size_t kSmallest = 60;  // columns of the smallest picture
constexpr std::size_t kFewestColumns = 160, kFewestRows = 90;
constexpr double kLeastContrast = 2.0;  // standard deviation of 0 … 255
constexpr double kDark = 40.0;          // mean of 0 … 255; black is 16
constexpr double kMostUnexplained = 0.5;
constexpr double kFarShare = 0.25;    // of the picture, moved since the reference: a new one is due
constexpr double kFastShare = 0.04;   // of the picture, moved since the frame before
constexpr double kFarTurn_px = 12.0;  // at the picture's edge, by turn or stretch
constexpr double kLeastGain = 0.5;    // of brightness against the reference
constexpr double kFaded = 0.2;
constexpr double kMostSpread_px = 0.5;  // of a band that has something to hold on to, at its size

double brightnessOf(const Plane& plane)
{
    double sum = 0.0;
    for (const float value : plane.values)
        sum += static_cast<double>(value);
    return sum / static_cast<double>(plane.values.size());
}

// Why a picture without contrast says nothing.
Phrase emptyBecause(const Plane& plane)
{
    return brightnessOf(plane) < kDark ? tooDark() : tooPlain();
}

double contrastOf(const Plane& plane)
{
    double sum = 0.0, squares = 0.0;
    for (const float value : plane.values) {
        sum += static_cast<double>(value);
        squares += static_cast<double>(value) * static_cast<double>(value);
    }
    const auto count = static_cast<double>(plane.values.size());
    return std::sqrt(std::max(0.0, squares / count - sum * sum / (count * count)));
}

RowMotion middleOf(const RowField& field)
{
    return motionAt(field, 0.5 * static_cast<double>(field.size() - 1));
}

bool fits(const std::optional<PictureMatch>& match)
{
    return match && match->unexplained < kMostUnexplained;
}

// Moved by more than a share of the picture.
bool isMoved(const RowMotion& now, const RowMotion& before, const Plane& plane, double share)
{
    return std::abs(now.right - before.right) > share * static_cast<double>(plane.width) ||
           std::abs(now.down - before.down) > share * static_cast<double>(plane.height);
}

// The end of a fade: hardly anything is left of the reference's light.
bool isFaded(const Plane& plane, const Plane& reference)
{
    return contrastOf(plane) < kFaded * contrastOf(reference) &&
           brightnessOf(plane) < 2.0 * kFaded * brightnessOf(reference);
}

bool isFar(const RowMotion& middle, const Plane& plane)
{
    const double halfWidth = 0.5 * static_cast<double>(plane.width);
    return isMoved(middle, {}, plane, kFarShare) ||
           std::abs(middle.tilt) * halfWidth > kFarTurn_px ||
           std::abs(middle.stretch) * halfWidth > kFarTurn_px;
}

// Rows at either end in which too many frames could not be laid over each other, and the band
// beside them, whose rows lean on those.
std::size_t unknownRows(const std::vector<std::size_t>& unknown, std::size_t frames,
                        const TileGrid& grid)
{
    std::size_t bands = 0;
    for (std::size_t k = 0; k < unknown.size() / 2; ++k)
        if (4 * std::max(unknown[k], unknown[unknown.size() - 1 - k]) > frames)
            bands = k + 2;
    return bands == 0 ? 0 : grid.firstRow + bands * grid.rows;
}

// Those that overlap or touch become one, with the reason of the longer.
std::vector<UnusableStretch> merged(std::vector<UnusableStretch> stretches)
{
    std::ranges::sort(stretches, {}, &UnusableStretch::from_s);
    std::vector<UnusableStretch> all;
    for (UnusableStretch& next : stretches) {
        const bool touches = !all.empty() && next.from_s <= all.back().to_s + 1e-6;
        if (!touches) {
            all.push_back(std::move(next));
            continue;
        }
        UnusableStretch& last = all.back();
        const double longer = next.to_s - next.from_s - (last.to_s - last.from_s);
        if (next.reason == last.reason || next.to_s <= last.to_s || longer > 1e-6 ||
            last.reason == aJump()) {
            if (longer > 1e-6 || last.reason == aJump())
                last.reason = next.reason;
            last.to_s = std::max(last.to_s, next.to_s);
        } else if (next.reason == aJump()) {
            last.to_s = std::max(last.to_s, next.to_s);
        } else {
            next.from_s = last.to_s;
            all.push_back(std::move(next));
        }
    }
    return all;
}

}  // namespace

void RowShiftReader::begin(const Frame& frame)
{
    m_shifts.width = frame.width;
    m_shifts.height = frame.height;
    m_halvings = halvingsOf(frame.width, frame.height);
    const std::size_t width = frame.width >> m_halvings, height = frame.height >> m_halvings;
    if (width < kFewestColumns || height < kFewestRows)
        return;
    m_grid = bandGrid(width, height, m_halvings);
    m_shifts.bandHeight = static_cast<double>(m_grid.rows) / static_cast<double>(height);
}

void RowShiftReader::add(const Frame& frame)
{
    if (m_times.empty())
        begin(frame);
    check(frame.width == m_shifts.width && frame.height == m_shifts.height,
          "frames of a film have one size");
    m_times.push_back(frame.time_s);
    ++m_shifts.frames;
    if (m_grid.size() == 0)
        return dropFrame(frame.time_s, tooSmall());

    Waiting next{.time_s = frame.time_s,
                 .index = static_cast<unsigned>(frame.index),
                 .levels = pyramidOf(shrunk(frame, m_halvings), kSmallest)};
    if (contrastOf(next.levels.back()) < kLeastContrast) {
        m_before.clear();
        return dropFrame(frame.time_s, emptyBecause(next.levels.back()));
    }
    if (m_reference && measureAgainstReference(next)) {
        m_before = std::move(next.levels);
        return;
    }
    std::vector<Plane> levels = next.levels;
    collect(std::move(next));
    m_before = std::move(levels);
}

bool RowShiftReader::measureAgainstReference(Waiting& frame)
{
    if (isFaded(frame.levels.back(), m_reference->levels.back())) {
        dropFrame(frame.time_s, tooDark());
        frame.levels.clear();
        return true;
    }
    const auto match = matchPicture(*m_reference, frame.levels, m_lastMiddle);
    const Plane& plane = frame.levels.front();
    if (!fits(match) || isFar(middleOf(match->field), plane) ||
        match->unexplained > 0.1 + 1.5 * *m_usual) {
        m_reference.reset();
        return false;
    }
    const RowMotion middle = middleOf(match->field);
    if (match->gain < kLeastGain || match->gain > 1.0 / kLeastGain)
        dropFrame(frame.time_s, tooDark());
    else if (m_lastFound + 1 == m_shifts.frames && isMoved(middle, m_lastMiddle, plane, kFastShare))
        dropFrame(frame.time_s, tooFast());
    else
        keepBands(frame, *match);
    m_lastFound = m_shifts.frames;
    m_lastMiddle = middle;
    return true;
}

void RowShiftReader::collect(Waiting frame)
{
    const Plane& plane = frame.levels.front();
    if (!m_waiting.empty()) {
        const auto match = matchPicture(*m_first, frame.levels, m_waiting.back().middle);
        if (fits(match) && !isFar(middleOf(match->field), plane)) {
            frame.middle = middleOf(match->field);
            const bool fast = isMoved(frame.middle, m_waiting.back().middle, plane, kFastShare);
            if (!fast) {
                m_waiting.push_back(std::move(frame));
                if (m_waiting.size() == kInReference)
                    makeReference();
                return;
            }
        }
        makeReference();
        m_reference.reset();
    }
    if (!m_before.empty()) {
        const auto match = matchPicture(referenceOf(m_before), frame.levels, {});
        if (!fits(match))
            m_shifts.unusable.push_back({m_times[m_times.size() - 2], frame.time_s, aJump()});
    }
    frame.middle = {};
    m_first = referenceOf(frame.levels);
    m_waiting.push_back(std::move(frame));
}

void RowShiftReader::makeReference()
{
    if (m_shifts.frames < kFewest)
        return dropWaiting(tooShort());
    if (m_waiting.size() < kFewest)
        return dropWaiting(m_waiting.size() > 1 ? tooFewAlike() : tooFast());
    const std::size_t seed = m_waiting.size() / 2;
    const ReferencePicture reference = referenceOf(m_waiting[seed].levels);
    std::vector<const Plane*> frames;
    std::vector<RowField> fields;
    std::vector<double> gains;
    std::vector<std::size_t> unknown(m_grid.bands);  // frames in which a band was not found
    for (const Waiting& frame : m_waiting) {
        RowMotion guess = frame.middle;
        guess += -1.0 * m_waiting[seed].middle;
        const auto match = matchPicture(reference, frame.levels, guess);
        if (!fits(match))
            continue;
        const BandMatch bands = matchBands(reference, frame.levels, match->field, m_grid);
        frames.push_back(&frame.levels.front());
        fields.push_back(bands.field);
        gains.push_back(bands.gain);
        for (std::size_t k = 0; k < unknown.size(); ++k)
            unknown[k] += bands.bands[k] ? 0 : 1;
    }
    if (frames.size() < kFewest)
        return dropWaiting(tooFewAlike());
    MeanPicture mean = meanPicture(frames, fields, gains);
    m_reference = referenceOf(pyramidOf(std::move(mean.plane), kSmallest));
    m_reference->sides = mean.sides;
    m_reference->ends = std::max(mean.ends, unknownRows(unknown, frames.size(), m_grid));
    m_first.reset();
    ++m_shifts.references;

    RowMotion guess = m_waiting.front().middle;
    guess += -1.0 * m_waiting[seed].middle;
    std::vector<double> unexplained;
    for (const Waiting& frame : m_waiting) {
        const auto match = matchPicture(*m_reference, frame.levels, guess);
        if (!fits(match)) {
            dropFrame(frame.time_s, tooFewAlike());
            continue;
        }
        guess = middleOf(match->field);
        unexplained.push_back(match->unexplained);
        keepBands(frame, *match);
    }
    m_lastMiddle = guess;
    m_lastFound = m_shifts.frames;
    m_usual = median(unexplained);
    m_waiting.clear();
}

void RowShiftReader::keepBands(const Waiting& frame, const PictureMatch& match)
{
    const BandMatch found = matchBands(*m_reference, frame.levels, match.field, m_grid);
    const double scale = std::ldexp(1.0, static_cast<int>(m_halvings));
    const auto height = static_cast<double>(frame.levels.front().height);
    std::vector<BandShift> bands;
    for (std::size_t k = 0; k < found.bands.size(); ++k) {
        const auto& band = found.bands[k];
        if (!band || !band->settled || band->spread.right > kMostSpread_px ||
            band->spread.down > kMostSpread_px)
            continue;
        const double middle = static_cast<double>(m_grid.firstRow) +
                              (static_cast<double>(k) + 0.5) * static_cast<double>(m_grid.rows);
        bands.push_back({.frameTime_s = frame.time_s,
                         .frame = frame.index,
                         .reference = static_cast<unsigned>(m_shifts.references - 1),
                         .row = middle / height - 0.5,
                         .across_px = scale * band->motion.right,
                         .up_px = -scale * band->motion.down,
                         .roll_rad = -band->motion.tilt,
                         .acrossSpread_px = scale * band->spread.right,
                         .upSpread_px = scale * band->spread.down,
                         .rollSpread_rad = band->spread.tilt});
    }
    if (bands.size() < found.bands.size() / 4)
        return dropFrame(frame.time_s, tooPlain());
    m_shifts.bands.insert(m_shifts.bands.end(), bands.begin(), bands.end());
}

void RowShiftReader::dropFrame(double time_s, const Phrase& reason)
{
    m_shifts.unusable.push_back({time_s, time_s, reason});
}

void RowShiftReader::dropWaiting(const Phrase& reason)
{
    for (const Waiting& frame : m_waiting)
        dropFrame(frame.time_s, reason);
    m_waiting.clear();
    m_first.reset();
}

RowShifts RowShiftReader::finish()
{
    if (!m_waiting.empty())
        makeReference();
    std::vector<double> steps;
    for (std::size_t k = 1; k < m_times.size(); ++k)
        steps.push_back(m_times[k] - m_times[k - 1]);
    const double step = median(steps);
    m_shifts.frameRate_hz = step > 0.0 ? 1.0 / step : 0.0;
    for (UnusableStretch& stretch : m_shifts.unusable)
        if (stretch.from_s == stretch.to_s) {
            stretch.from_s = std::max(m_times.front(), stretch.from_s - 0.5 * step);
            stretch.to_s += 0.5 * step;
        }
    widenSpreads(m_shifts);
    m_shifts.unusable = merged(std::move(m_shifts.unusable));
    return std::move(m_shifts);
}

}  // namespace stillbay
