// SPDX-License-Identifier: MIT
#include "ui/recordings/film_read.h"

#include "core/calibrate/film_readout.h"
#include "core/calibrate/rotors_heard.h"

#include <QFileInfo>

#include <algorithm>
#include <filesystem>

namespace stillbay::ui {
namespace {

constexpr std::size_t kMostStills = 24;
constexpr int kStillWidth = 640;
constexpr std::size_t kMostLinesKept = 2;
constexpr std::size_t kMostReadoutsKept = kMostLinesKept * kMostLinesAsked;

// Every so many frames, so that there are never more than kMostStills.
class Stills final {
public:
    void see(const Frame& frame)
    {
        if (frame.index % m_step != 0)
            return;
        if (m_stills.size() == kMostStills) {
            m_step *= 2;
            std::erase_if(m_stills, [this](const FilmStill& still) {
                return still.bend.frame % m_step != 0;
            });
            if (frame.index % m_step != 0)
                return;
        }
        const QImage whole(frame.luma.data(), static_cast<int>(frame.width),
                           static_cast<int>(frame.height), static_cast<qsizetype>(frame.width),
                           QImage::Format_Grayscale8);
        FilmStill still;
        still.picture = static_cast<int>(frame.width) > kStillWidth
                            ? whole.scaledToWidth(kStillWidth, Qt::SmoothTransformation)
                            : whole.copy();
        still.time_s = frame.time_s;
        still.bend.frame = static_cast<unsigned>(frame.index);
        m_stills.push_back(std::move(still));
    }

    std::vector<FilmStill> with(const std::vector<FrameBend>& bends) &&
    {
        for (FilmStill& still : m_stills) {
            const auto bend = std::lower_bound(
                bends.begin(), bends.end(), still.bend.frame,
                [](const FrameBend& b, unsigned frame) { return b.frame < frame; });
            if (bend != bends.end() && bend->frame == still.bend.frame)
                still.bend = *bend;
        }
        return std::move(m_stills);
    }

private:
    std::size_t m_step = 1;
    std::vector<FilmStill> m_stills;
};

}  // namespace

FilmKey filmKeyOf(const NamedRecording& film)
{
    const QFileInfo file(QString::fromStdString(film.file));
    const bool isThere = file.isFile();
    return {file.filePath(), isThere ? file.size() : -1,
            isThere ? file.lastModified().toMSecsSinceEpoch() : 0, film.from_s, film.to_s};
}

ReadFilm::ReadFilm(ClipShifts clip, std::optional<Result<SoundTrack>> sound,
                   std::vector<FilmStill> stills)
    : m_clip(std::move(clip)),
      m_sound(std::move(sound)),
      m_stills(std::move(stills)),
      m_lines(kMostLinesKept),
      m_readouts(kMostReadoutsKept),
      m_heard(1)
{
}

Result<FilmReading> ReadFilm::lines(const FilmReadingOptions& options, const std::stop_token& stop,
                                    const Progress& progress) const
{
    const std::scoped_lock lock(m_mutex);
    return m_lines.of(options, stop, [&] { return readLines(m_clip, options, stop, progress); });
}

Result<ReadoutEstimate> ReadFilm::readout(double about_hz, double tolerance_hz,
                                          const std::stop_token& stop,
                                          const Progress& progress) const
{
    const std::scoped_lock lock(m_mutex);
    return m_readouts.of({about_hz, tolerance_hz}, stop, [&] {
        return estimateReadout(m_clip.shifts, about_hz, tolerance_hz, stop, progress);
    });
}

Result<HeardOnFilm> ReadFilm::heard(const Setup& setup, const std::stop_token& stop) const
{
    if (!m_sound)
        return HeardOnFilm{};
    const double rate_hz = *m_sound ? (*m_sound)->rate_hz : kSoundRate_hz;
    const std::scoped_lock lock(m_mutex);
    return m_heard.of(rotorSpeedOptions(setup, rate_hz, true), stop,
                      [&] { return heardOnFilm(setup, *m_sound, stop); });
}

Result<FilmAnswer> readFilmFile(const NamedRecording& film, const Caller<FilmAnswer>& caller)
{
    ClipOptions part{.from_s = film.from_s.value_or(0.0)};
    part.to_s = film.to_s.value_or(part.from_s + kLongestPart_s);
    const std::filesystem::path file(film.file);
    FilmAnswer answer;
    const auto failed = [&](const Error& error) -> Result<FilmAnswer> {
        if (caller.stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        answer.failure = error;
        return answer;
    };
    Result<ClipFacts> facts = probeClip(file, part, caller.stop);
    if (!facts)
        return failed(facts.error());
    answer.length_s = std::max(facts->duration_s, facts->frameTime_s.back() + facts->tick_s);
    std::optional<Result<SoundTrack>> sound;
    if (facts->hasSound)
        sound = readSoundTrack(file, *facts, part, caller.stop);
    Stills stills;
    Result<ClipShifts> clip =
        readShifts(file, *std::move(facts), part, caller.stop, caller.progress,
                   [&stills](const Frame& frame) { stills.see(frame); });
    if (!clip)
        return failed(clip.error());
    if (!film.to_s && answer.length_s > part.to_s)
        clip->warnings.insert(
            clip->warnings.begin(),
            {"film_longest_part", phrase("%1\u00A0s are read at once: for another part of the film "
                                         "say from when to when it is used",
                                         fixed(kLongestPart_s, 0))});
    std::vector<FilmStill> shown = std::move(stills).with(rowBends(clip->shifts));
    answer.film =
        std::make_shared<const ReadFilm>(*std::move(clip), std::move(sound), std::move(shown));
    return answer;
}

}  // namespace stillbay::ui
