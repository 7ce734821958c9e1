// SPDX-License-Identifier: MIT
#include "ui/recordings/spectrogram_finding.h"

#include "core/assess/texts.h"
#include "core/recording/spectrogram.h"
#include "ui/recordings/recording_words.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kRunning_s = 0.5, kRinging_s = 1.0;  // of a window: rotors, and slow modes
constexpr std::size_t kLeastWindow = 64;
constexpr double kHighestDrawn_hz = 1000.0;
constexpr double kRows = 400.0;           // of what is drawn
constexpr double kLowest_hz = 1.0;        // below it gravity leans
constexpr double kDeepestDensity = 1e-7;  // of the greatest
constexpr double kMostLinePoints = 500.0;

const Channel* loudestOf(const Recording& recording, Quantity quantity)
{
    const Channel* loudest = nullptr;
    double most = 0.0;
    for (const Channel& channel : recording.channels) {
        if (channel.quantity != quantity || channel.values.empty())
            continue;
        double sum = 0.0, squares = 0.0;
        for (const double value : channel.values) {
            sum += value;
            squares += value * value;
        }
        const auto count = static_cast<double>(channel.values.size());
        const double variance = squares / count - sum / count * (sum / count);
        if (!loudest || variance > most) {
            loudest = &channel;
            most = variance;
        }
    }
    return loudest;
}

SpectrogramOptions optionsFor(const FindingQuestion& question)
{
    const Recording& recording = *question.recording;
    const bool isRinging = question.named.kind == RecordingKind::Pluck;
    const auto wanted =
        static_cast<std::size_t>(recording.rate * (isRinging ? kRinging_s : kRunning_s));
    const double hidden = std::max(0.5 * recording.rate / kHighestDrawn_hz, 1.0);
    return {.segment =
                std::bit_floor(std::max(std::min(wanted, recording.samples() / 8), kLeastWindow)),
            .mostRows = static_cast<std::size_t>(kRows * hidden)};
}

// What of it is drawn, without the slow drift at its foot.
std::shared_ptr<DensityPicture> pictureOf(const Spectrogram& found)
{
    auto picture = std::make_shared<DensityPicture>();
    picture->x = found.time;
    std::vector<std::size_t> rows;
    for (std::size_t row = 0; row < found.frequency_hz.size(); ++row)
        if (found.frequency_hz[row] >= kLowest_hz && found.frequency_hz[row] <= kHighestDrawn_hz) {
            rows.push_back(row);
            picture->y.push_back(found.frequency_hz[row]);
        }
    float most = 0.0F;
    for (std::size_t column = 0; column < found.time.size(); ++column)
        for (const std::size_t row : rows) {
            picture->value.push_back(found.at(column, row));
            most = std::max(most, found.at(column, row));
        }
    if (picture->x.size() < 2 || rows.size() < 2 || !(most > 0.0F))
        return nullptr;
    std::vector<float> sorted = picture->value;
    const auto fifth = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 5);
    std::nth_element(sorted.begin(), fifth, sorted.end());
    const auto high = static_cast<double>(most);
    picture->range = {std::clamp(static_cast<double>(*fifth), kDeepestDensity * high, 0.1 * high),
                      high};
    return picture;
}

}  // namespace

std::optional<MeasuredShown> spectrogramShown(const FindingQuestion& question, Quantity quantity,
                                              std::vector<MeasuredCurve> lines,
                                              const std::stop_token& stop)
{
    const Recording& recording = *question.recording;
    const Channel* const channel = loudestOf(recording, quantity);
    if (!channel)
        return {};
    const Result<Spectrogram> found =
        spectrogram(channel->values, recording.rate, optionsFor(question), stop);
    if (!found)
        return {};
    const std::shared_ptr<DensityPicture> picture = pictureOf(*found);
    if (!picture)
        return {};
    const QString unit = quantityUnit(quantity);
    const QString name = QString::fromStdString(channel->name);
    picture->title = unit.isEmpty() || quantity == Quantity::Sound
                         ? QObject::tr("Density of %1 (1/Hz)").arg(name)
                         : QObject::tr("Density of %1 ((%2)²/Hz)").arg(name, unit);
    MeasuredShown shown;
    shown.name = QObject::tr("Spectrogram");
    shown.across = {QObject::tr("Time (s)"), QStringLiteral("time_s")};
    shown.up = {QObject::tr("Frequency (Hz)"), QStringLiteral("frequency_hz")};
    shown.picture = picture;
    shown.curves = std::move(lines);
    shown.summary =
        QObject::tr("Which frequencies %1 holds at each moment, the stronger the shade the more.")
            .arg(name);
    return shown;
}

std::vector<MeasuredCurve> modeLines(const FindingQuestion& question,
                                     const std::vector<double>& frequency_hz)
{
    std::vector<MeasuredCurve> lines;
    for (const double frequency : frequency_hz) {
        lines.push_back({QObject::tr("predicted, %1 Hz").arg(plainNumber(frequency, 3)),
                         QStringLiteral("predicted_%1_hz").arg(lines.size() + 1),
                         {0.0, question.recording->duration()},
                         {frequency, frequency},
                         true});
        lines.back().hue = lines.size() - 1;
    }
    return lines;
}

std::vector<MeasuredCurve> drawnOrders(const FindingQuestion& question,
                                       const std::vector<double>& time,
                                       const std::vector<double>& speed, bool isPredicted)
{
    const int blades = question.setup.drive.propeller.blades;
    const double highest = std::min(0.5 * question.recording->rate, kHighestDrawn_hz);
    const auto step = static_cast<std::size_t>(
        std::max(1.0, std::ceil(static_cast<double>(time.size()) / kMostLinePoints)));
    std::vector<MeasuredCurve> lines;
    for (const int order : {1, blades, 2 * blades}) {
        const QString name = displayText(orderName(order, blades));
        MeasuredCurve line{isPredicted ? QObject::tr("%1, predicted").arg(name)
                                       : QObject::tr("%1, by the speed followed").arg(name),
                           QStringLiteral("order_%1_hz").arg(order),
                           {},
                           {},
                           isPredicted};
        line.hue = lines.size();
        for (std::size_t k = 0; k < time.size(); k += step) {
            const double frequency = order * speed[k];
            line.x.push_back(time[k]);
            line.y.push_back(frequency > 0.0 && frequency < highest
                                 ? frequency
                                 : std::numeric_limits<double>::quiet_NaN());
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace stillbay::ui
