// SPDX-License-Identifier: MIT
#include "ui/film/filmed_picture.h"

#include "ui/film/test_scene.h"

#include <QKeyEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOptionFocusRect>

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kMargin = 0.06;             // of the width, drawn beyond the picture's edges
constexpr double kFastest_ms = 1000 / 60.0;  // what a screen shows
constexpr int kSlowdown = 10;

Canvas canvasOf(QImage& image)
{
    return {image.width(),
            image.height(),
            {reinterpret_cast<std::uint32_t*>(image.bits()),
             static_cast<std::size_t>(image.width()) * static_cast<std::size_t>(image.height())}};
}

Scene sceneOf(const QImage& image)
{
    return {image.width(),
            image.height(),
            {reinterpret_cast<const std::uint32_t*>(image.constBits()),
             static_cast<std::size_t>(image.width()) * static_cast<std::size_t>(image.height())}};
}

// White words on a dark plate, readable on any picture.
void drawTag(QPainter& painter, const QRect& area, Qt::Alignment corner, const QString& text)
{
    const QFontMetrics metrics = painter.fontMetrics();
    const QSize size(metrics.horizontalAdvance(text) + 10, metrics.height() + 2);
    const QRect plate =
        QStyle::alignedRect(Qt::LeftToRight, corner, size, area.adjusted(4, 4, -4, -4));
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0, 0, 0, 175));
    painter.drawRoundedRect(plate, 3.0, 3.0);
    painter.setPen(Qt::white);
    painter.drawText(plate, Qt::AlignCenter, text);
}

}  // namespace

FilmedPicture::FilmedPicture(QWidget* parent) : QWidget(parent)
{
    m_film.camera = {.width_px = 1920, .height_px = 1080, .horizontalView = 1, .frameRate_hz = 30};
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Picture as filmed"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    m_timer.setTimerType(Qt::PreciseTimer);
    connect(&m_timer, &QTimer::timeout, this, &FilmedPicture::nextFrame);
}

void FilmedPicture::setFilm(Film film)
{
    const bool shape = film.camera.width_px * m_film.camera.height_px !=
                       film.camera.height_px * m_film.camera.width_px;
    const bool pace = film.camera.frameRate_hz != m_film.camera.frameRate_hz;
    m_film = std::move(film);
    if (shape)
        updateGeometry();
    if (pace)
        runTimer();
    changed();
}

void FilmedPicture::setGain(int gain)
{
    m_gain = gain;
    changed();
}

void FilmedPicture::setSplit(bool split)
{
    m_split = split;
    changed();
}

void FilmedPicture::setStale(bool stale)
{
    if (stale == m_stale)
        return;
    m_stale = stale;
    update();
}

void FilmedPicture::setPlaying(bool on)
{
    m_playing = on;
    m_frame = 0;
    runTimer();
    changed();
}

void FilmedPicture::setSlow(bool slow)
{
    m_slow = slow;
    runTimer();
}

void FilmedPicture::changed()
{
    m_recorded = false;
    update();
}

double FilmedPicture::period_ms() const
{
    return std::max(kFastest_ms, 1000 / m_film.camera.frameRate_hz) * (m_slow ? kSlowdown : 1);
}

void FilmedPicture::runTimer()
{
    if (!m_playing || !isVisible()) {
        m_timer.stop();
        return;
    }
    m_startFrame = m_frame;
    m_running.start();
    m_timer.start(static_cast<int>(period_ms()));
}

// By the clock, so that a late tick leaves a frame out instead of slowing the film.
void FilmedPicture::nextFrame()
{
    const int due =
        m_startFrame + static_cast<int>(static_cast<double>(m_running.elapsed()) / period_ms());
    if (due == m_frame)
        return;
    m_frame = due;
    changed();
}

void FilmedPicture::showEvent(QShowEvent* event)
{
    runTimer();
    QWidget::showEvent(event);
}

void FilmedPicture::hideEvent(QHideEvent* event)
{
    m_timer.stop();
    QWidget::hideEvent(event);
}

void FilmedPicture::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space)
        emit playWanted();
    else
        QWidget::keyPressEvent(event);
}

int FilmedPicture::heightForWidth(int width) const
{
    return static_cast<int>(std::lround(width * m_film.camera.height_px / m_film.camera.width_px));
}

QSize FilmedPicture::sizeHint() const
{
    return {300, std::clamp(heightForWidth(300), 90, 300)};
}

// The largest rectangle of the camera's aspect, in the middle.
QRect FilmedPicture::place() const
{
    const QSizeF film(m_film.camera.width_px, m_film.camera.height_px);
    const QSize fitted = film.scaled(size(), Qt::KeepAspectRatio).toSize().expandedTo(QSize(2, 2));
    return {(width() - fitted.width()) / 2, (height() - fitted.height()) / 2, fitted.width(),
            fitted.height()};
}

const QImage& FilmedPicture::image()
{
    record();
    return m_image;
}

void FilmedPicture::record()
{
    const QSize size = place().size() * devicePixelRatioF();
    if (m_recorded && m_image.size() == size)
        return;
    const int margin = std::max(4, static_cast<int>(kMargin * size.width()));
    if (m_image.size() != size) {
        m_image = QImage(size, QImage::Format_RGB32);
        m_scene = testScene(size, margin);
    }
    Shot shot{m_film.camera, m_film.mounted, 1.0 * m_gain, m_frame};
    const bool halves = m_split && m_film.rigid;
    const int border = halves ? size.width() / 2 : size.width();
    filmFrame(sceneOf(m_scene), shot, canvasOf(m_image), 0, border);
    if (halves) {
        shot.vibrations = *m_film.rigid;
        filmFrame(sceneOf(m_scene), shot, canvasOf(m_image), border, size.width());
    }
    m_recorded = true;
}

void FilmedPicture::drawMarks(QPainter& painter, const QRect& area) const
{
    if (m_split)
        drawHalves(painter, area);
    if (m_gain != 1)
        drawTag(painter, area, Qt::AlignHCenter | Qt::AlignTop, tr("wobble drawn ×%1").arg(m_gain));
}

void FilmedPicture::drawHalves(QPainter& painter, const QRect& area) const
{
    const QRect left(area.topLeft(), QSize(area.width() / 2, area.height()));
    const QRect right(left.topRight() + QPoint(1, 0), area.bottomRight());
    if (m_film.rigid) {
        painter.fillRect(QRect(right.left() - 1, area.top(), 2, area.height()), Qt::white);
        drawTag(painter, right, Qt::AlignHCenter | Qt::AlignBottom, tr("without tubes"));
    } else {
        painter.fillRect(right, QBrush(QColor(0, 0, 0, 130)));
        drawTag(painter, right, Qt::AlignCenter, tr("without tubes: no answer"));
    }
    drawTag(painter, left, Qt::AlignHCenter | Qt::AlignBottom, tr("on the tubes"));
}

void FilmedPicture::paintEvent(QPaintEvent*)
{
    record();
    QPainter painter(this);
    const QRect area = place();
    painter.setOpacity(m_stale ? 0.45 : 1.0);
    painter.drawImage(area, m_image);
    QFont small = font();
    small.setPointSizeF(0.9 * small.pointSizeF());
    painter.setFont(small);
    painter.setRenderHint(QPainter::Antialiasing);
    drawMarks(painter, area);
    if (hasFocus()) {
        painter.setOpacity(1.0);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(palette().color(QPalette::Highlight), 2.0));
        painter.drawRect(area.adjusted(1, 1, -1, -1));
    }
}

}  // namespace stillbay::ui
