// SPDX-License-Identifier: MIT
#include "ui/recordings/film_page.h"

#include "core/base/units.h"
#include "ui/recordings/film_frame.h"
#include "ui/recordings/part_row.h"
#include "ui/recordings/reading_strip.h"
#include "ui/recordings/result_part.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr double kSlowestThrottle = 1.0, kFullThrottle = 100.0;  // [%] as the setup file takes it
constexpr double kShownTick_s = 0.01;
constexpr double kFirstThrottle = 40.0;  // offered when it gets known

}  // namespace

FilmPage::FilmPage(QWidget* parent)
    : QWidget(parent),
      m_isThrottleKnown(new QCheckBox(tr("Filmed at a throttle of"))),
      m_throttle(new NumberBox),
      m_camera(new QLabel),
      m_strip(new ReadingStrip(OfWhat::Film)),
      m_frame(new FilmFrame),
      m_frames(new QSlider(Qt::Horizontal)),
      m_part(new PartRow(OfWhat::Film)),
      m_result(new ResultPart(OfWhat::Film))
{
    m_isThrottleKnown->setToolTip(
        tr("Ticked: where the stick stood is known, which settles what each line is. Otherwise the "
           "throttle that explains most of the lines is found."));
    m_throttle->setAccessibleName(tr("Throttle of the film"));
    m_throttle->setUnit(QStringLiteral("%"));
    m_throttle->setRange(kSlowestThrottle, kFullThrottle);
    m_camera->setWordWrap(true);
    m_camera->setToolTip(
        tr("They stand among the craft's numbers, under the camera, and belong to the size and "
           "rate that was filmed with."));
    m_frames->setAccessibleName(tr("Which frame is shown"));
    m_frames->setToolTip(tr("Goes through frames of the film."));
    auto* const flown = new QHBoxLayout;
    flown->setContentsMargins(4, 0, 4, 0);
    flown->addWidget(m_isThrottleKnown);
    flown->addWidget(m_throttle);
    flown->addSpacing(12);
    flown->addWidget(m_camera, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 4, 6, 4);
    layout->setSpacing(2);
    layout->addLayout(flown);
    layout->addWidget(m_strip);
    layout->addWidget(m_frame, 2);
    layout->addWidget(m_frames);
    layout->addWidget(m_part);
    layout->addWidget(m_result, 3);

    connect(m_part, &PartRow::partWanted, this, &FilmPage::partWanted);
    connect(m_frames, &QSlider::valueChanged, this, &FilmPage::showStill);
    connect(m_isThrottleKnown, &QCheckBox::toggled, this, &FilmPage::tickThrottle);
    connect(m_throttle, &NumberBox::valueChanged, this,
            [this](double percent) { emit throttleWanted(percent / kPercent); });
    showNothing();
}

void FilmPage::showNothing()
{
    m_stills.clear();
    m_strip->clear();
    m_frame->clear();
    m_frames->setEnabled(false);
    m_part->setLength(0.0, 0.0);
    m_part->setPart({}, {});
    m_result->setStale(false);
    m_result->setCharts({});
}

void FilmPage::setLength(double length_s, double tick_s)
{
    m_part->setLength(std::ceil(length_s / kShownTick_s) * kShownTick_s, tick_s);
}

void FilmPage::showFilmState(const ReadFilm& film)
{
    const ClipFacts& facts = film.clip().facts;
    m_strip->showState(tr("%1 × %2 pixels, %3 frames a second, %4 frames read")
                           .arg(facts.width)
                           .arg(facts.height)
                           .arg(plainNumber(facts.frameRate_hz, 4))
                           .arg(film.clip().frames));
}

// The frame whose rows stand furthest apart comes first.
void FilmPage::showFilm(const ReadFilm& film)
{
    m_stills = film.stills();
    m_filmWidth = film.clip().facts.width;
    m_largest_px = 0.0;
    for (const FilmStill& still : m_stills)
        for (const RowBend& row : still.bend.rows)
            m_largest_px = std::max({m_largest_px, std::abs(row.across_px), std::abs(row.up_px)});
    const auto most = std::max_element(
        m_stills.begin(), m_stills.end(),
        [](const FilmStill& a, const FilmStill& b) { return a.bend.rms_px < b.bend.rms_px; });
    {
        const QSignalBlocker quiet(m_frames);
        m_frames->setRange(0, std::max(0, static_cast<int>(m_stills.size()) - 1));
        m_frames->setValue(static_cast<int>(most - m_stills.begin()));
    }
    m_frames->setEnabled(m_stills.size() > 1);
    showStill();
}

void FilmPage::showStill()
{
    const auto place = static_cast<std::size_t>(m_frames->value());
    if (place < m_stills.size())
        m_frame->setStill(m_stills[place], m_filmWidth, m_cameraWidth, m_largest_px);
    else
        m_frame->clear();
    m_frames->setAccessibleDescription(m_frame->text());
}

void FilmPage::setNamed(const NamedRecording& named, const Camera& camera)
{
    const QSignalBlocker quietKnown(m_isThrottleKnown), quietThrottle(m_throttle);
    m_isThrottleKnown->setChecked(named.throttle.has_value());
    m_throttle->setEnabled(named.throttle.has_value());
    if (const auto shown = named.throttle ? named.throttle : m_found)
        m_throttle->show(kPercent * *shown);
    m_camera->setText(
        tr("Readout %1 ms, exposure %2 ms, as the craft has them.")
            .arg(plainNumber(camera.readout_ms, 4), plainNumber(camera.exposure_ms, 3)));
    m_part->setPart(named.from_s, named.to_s);
    if (std::exchange(m_cameraWidth, camera.width_px) != m_cameraWidth)
        showStill();
}

void FilmPage::setFound(std::optional<double> throttle)
{
    m_found = throttle;
    const QSignalBlocker quiet(m_throttle);
    if (throttle && !m_isThrottleKnown->isChecked())
        m_throttle->show(std::round(kPercent * *throttle));
}

// Known is what the box offers, or what is typed into it next.
void FilmPage::tickThrottle(bool isKnown)
{
    m_throttle->setEnabled(isKnown);
    if (!isKnown)
        emit throttleWanted({});
    else if (m_found)
        emit throttleWanted(m_throttle->value() / kPercent);
    else
        m_throttle->setFocus();
}

}  // namespace stillbay::ui
