// SPDX-License-Identifier: MIT
#pragma once

#include "ui/charts/measured_chart.h"
#include "ui/recordings/film_read.h"

#include <QWidget>

#include <optional>
#include <vector>

class QCheckBox;
class QLabel;
class QSlider;

namespace stillbay::ui {

class FilmFrame;
class NumberBox;
class PartRow;
class ReadingStrip;
class ResultPart;

/// One film: how it was taken, a frame with its rows, and what it shows.
class FilmPage final : public QWidget {
    Q_OBJECT
public:
    explicit FilmPage(QWidget* parent = nullptr);

    void showNothing();
    void setLength(double length_s, double tick_s);  ///< of the whole film; 0: it is not known
    void showFilm(const ReadFilm& film);
    void showFilmState(const ReadFilm& film);  ///< what is said of its form, alone
    /// What of it is the builder's, and the camera that it was taken with.
    void setNamed(const NamedRecording& named, const Camera& camera);
    /// 0 … 1, that explains the film; offered where the builder says that it is known.
    void setFound(std::optional<double> throttle);

    FilmFrame& frame() { return *m_frame; }
    QSlider& frames() { return *m_frames; }
    ReadingStrip& strip() { return *m_strip; }
    ResultPart& result() { return *m_result; }

signals:
    /// [s] since the beginning; none: from there, or up to there
    void partWanted(std::optional<double> from_s, std::optional<double> to_s);
    void throttleWanted(std::optional<double> throttle);  ///< 0 … 1; none: not known

private:
    void showStill();
    void tickThrottle(bool isKnown);

    std::vector<FilmStill> m_stills;
    unsigned m_filmWidth = 0;
    double m_cameraWidth = 0.0;
    std::optional<double> m_found;
    double m_largest_px = 0.0;
    QCheckBox* m_isThrottleKnown;
    NumberBox* m_throttle;
    QLabel* m_camera;
    ReadingStrip* m_strip;
    FilmFrame* m_frame;
    QSlider* m_frames;
    PartRow* m_part;
    ResultPart* m_result;
};

}  // namespace stillbay::ui
