// SPDX-License-Identifier: MIT
#pragma once

#include "core/film/filmed.h"

#include <QElapsedTimer>
#include <QImage>
#include <QTimer>
#include <QWidget>

#include <optional>
#include <vector>

namespace stillbay::ui {

/// What moves the picture.
struct Film {
    CameraModel camera;
    std::vector<CameraVibration> mounted;               ///< on the tubes
    std::optional<std::vector<CameraVibration>> rigid;  ///< without tubes; none: no finite answer
};

/// The test scene as the camera records it, still or playing. Draws only what it is given, and
/// anew only when that has changed.
class FilmedPicture final : public QWidget {
    Q_OBJECT
public:
    explicit FilmedPicture(QWidget* parent = nullptr);

    void setFilm(Film film);
    void setGain(int gain);     ///< motion drawn so many times larger, and marked so
    void setSplit(bool split);  ///< the right half shows the film without tubes
    void setPlaying(bool on);   ///< off: back to the first frame
    void setSlow(bool slow);    ///< ten times slower
    void setStale(bool stale);

    int frame() const { return m_frame; }
    const QImage& image();  ///< the recorded frame as drawn now, without marks

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {160, 90}; }

signals:
    void playWanted();  ///< the space bar was pressed

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    QRect place() const;
    void record();
    void drawMarks(QPainter& painter, const QRect& area) const;
    void drawHalves(QPainter& painter, const QRect& area) const;
    void changed();
    void runTimer();
    void nextFrame();
    double period_ms() const;

    Film m_film;
    int m_gain = 1;
    bool m_split = false, m_playing = false, m_slow = false, m_stale = false;
    int m_frame = 0;
    QTimer m_timer;
    QElapsedTimer m_running;  // since frame m_startFrame was shown
    int m_startFrame = 0;
    QImage m_scene;  // with its margin
    QImage m_image;
    bool m_recorded = false;  // m_image is of the film, frame and size at hand
};

}  // namespace stillbay::ui
