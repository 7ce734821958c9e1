// SPDX-License-Identifier: MIT
#include "ui/film/filmed_panel.h"

#include "core/assess/vibrations.h"
#include "core/craft/craft.h"
#include "core/response/at_throttle.h"
#include "ui/document/throttle_cursor.h"
#include "ui/film/filmed_picture.h"
#include "ui/widgets/labels.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace stillbay::ui {
namespace {

constexpr std::array kGains{1, 3, 10};
constexpr int kFirstGain = 10;  // in a small picture nothing less is seen

QString pixels(double px)
{
    return QLocale().toString(px, 'f', px < 1.0 ? 2 : px < 100.0 ? 1 : 0);
}

QString wobbleText(double throttle, double wobble_px, const Limits& limits)
{
    const QString percent = QLocale().toString(100.0 * throttle, 'g', 3);
    switch (gradeOf(wobble_px, limits.faint_px, limits.bad_px)) {
        case Grade::Clean:
            return QObject::tr("At %1 % throttle: wobble %2 px, clean.")
                .arg(percent, pixels(wobble_px));
        case Grade::Faint:
            return QObject::tr("At %1 % throttle: wobble %2 px, faint.")
                .arg(percent, pixels(wobble_px));
        case Grade::Bad:
            break;
    }
    return QObject::tr("At %1 % throttle: wobble %2 px, bad.").arg(percent, pixels(wobble_px));
}

// How the strongest part moves from frame to frame; empty while nothing moves.
QString beatText(const ThrottlePoint& point, double frameRate_hz)
{
    const auto strongest = std::max_element(
        point.orders.begin(), point.orders.end(),
        [](const OrderPoint& a, const OrderPoint& b) { return a.wobble_px < b.wobble_px; });
    if (strongest == point.orders.end() || !(strongest->wobble_px > 0))
        return {};
    const QLocale locale;
    return QObject::
        tr("Its strongest part swings at %1 Hz and beats against the %2 frames a second at %3 Hz.")
            .arg(locale.toString(strongest->frequency_hz, 'f', 1),
                 locale.toString(frameRate_hz, 'g', 4),
                 locale.toString(beat_hz(strongest->frequency_hz, frameRate_hz), 'f', 1));
}

}  // namespace

FilmedPanel::FilmedPanel(ThrottleCursor& cursor, QWidget* parent)
    : QWidget(parent),
      m_cursor(cursor),
      m_picture(new FilmedPicture),
      m_play(new QToolButton),
      m_slow(new QCheckBox(tr("Slow"))),
      m_split(new QCheckBox(tr("Without tubes"))),
      m_caption(new QLabel),
      m_words(Paced::Pace::TenASecond, [this] { writeCaption(); })
{
    m_picture->setToolTip(
        tr("A drawn scene, bent row by row as the rolling shutter records it at the throttle "
           "looked at, and smeared by the exposure. Motors turn at slightly different speeds, so "
           "their excitations are drawn out of step: over many frames the picture wobbles by the "
           "number below."));
    m_caption->setWordWrap(true);
    m_caption->setAccessibleName(tr("Wobble at the throttle looked at"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 4, 8, 6);
    layout->setSpacing(4);
    layout->addLayout(makeHeading());
    layout->addWidget(m_picture);
    layout->addLayout(makeControls());
    layout->addWidget(m_caption);
    layout->addStretch();
    connect(&m_cursor, &ThrottleCursor::moved, this, &FilmedPanel::showPoint);
    connect(m_picture, &FilmedPicture::playWanted, m_play, &QAbstractButton::toggle);
}

QHBoxLayout* FilmedPanel::makeHeading()
{
    auto* const title = new QLabel(tr("As filmed"));
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    auto* const row = new QHBoxLayout;
    row->setSpacing(0);
    row->addWidget(title);
    row->addStretch(1);
    auto* const gains = new QButtonGroup(this);
    for (const int gain : kGains) {
        auto* const button = new QToolButton;
        button->setText(tr("×%1").arg(gain));
        button->setCheckable(true);
        button->setAutoRaise(true);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setAccessibleName(tr("Wobble drawn %1 times").arg(gain));
        button->setToolTip(gain == 1
                               ? tr("The wobble as large as it is in the film. The picture here is "
                                    "smaller than the film, and so is the wobble.")
                               : tr("The wobble drawn %1 times larger than it is, and marked so in "
                                    "the picture.")
                                     .arg(gain));
        button->setObjectName(QStringLiteral("view.filmedGain%1").arg(gain));
        gains->addButton(button, gain);
        row->addWidget(button);
    }
    connect(gains, &QButtonGroup::idToggled, this, [this](int gain, bool on) {
        if (on)
            m_picture->setGain(gain);
    });
    gains->button(kFirstGain)->setChecked(true);
    return row;
}

QHBoxLayout* FilmedPanel::makeControls()
{
    m_play->setCheckable(true);
    m_play->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    m_play->setFocusPolicy(Qt::StrongFocus);
    m_play->setToolTip(
        tr("Plays the film frame by frame at the camera's own rate, at most 60 a second; a camera "
           "that is faster is slowed down to that. Still, it shows the first frame."));
    m_slow->setObjectName(QStringLiteral("view.filmedSlow"));
    m_slow->setAccessibleName(tr("Slow motion"));
    m_slow->setToolTip(tr("Plays ten times slower, so that the beat can be followed."));
    m_split->setObjectName(QStringLiteral("view.filmedSplit"));
    m_split->setAccessibleName(tr("Right half without tubes"));
    m_split->setToolTip(
        tr("The right half shows what the same camera would film at the same throttle, rigidly "
           "mounted instead of on tubes."));
    connect(m_play, &QToolButton::toggled, this, &FilmedPanel::showPlaying);
    connect(m_slow, &QCheckBox::toggled, m_picture, &FilmedPicture::setSlow);
    connect(m_split, &QCheckBox::toggled, m_picture, &FilmedPicture::setSplit);
    m_split->setChecked(true);
    showPlaying(false);
    auto* const row = new QHBoxLayout;
    row->addWidget(m_play);
    row->addWidget(m_slow);
    row->addStretch(1);
    row->addWidget(m_split);
    return row;
}

void FilmedPanel::showPlaying(bool on)
{
    m_play->setText(on ? tr("Stop") : tr("Play"));
    m_play->setAccessibleName(on ? tr("Stop the film") : tr("Play the film"));
    m_play->setIcon(style()->standardIcon(on ? QStyle::SP_MediaStop : QStyle::SP_MediaPlay));
    m_picture->setPlaying(on);
}

void FilmedPanel::setAssessment(const Setup& setup, const Assessment& assessment)
{
    m_setup = setup;
    m_assessment = assessment;
    showPoint();
}

void FilmedPanel::showPoint()
{
    const ThrottlePoint* const point = pointAt(m_assessment.throttle, m_cursor.throttle());
    if (!m_setup || !point)
        return;
    const CameraModel camera = makeCamera(m_setup->camera);
    Film film{camera, vibrationsAt(*point, camera, Hold::Tubes), {}};
    if (point->rigid_px)
        film.rigid = vibrationsAt(*point, camera, Hold::Rigid);
    m_picture->setFilm(std::move(film));
    m_text = wobbleText(point->throttle, point->wobble_px, m_setup->limits);
    if (point->rigid_px)
        m_text += u' ' + tr("Without tubes: %1 px.").arg(pixels(*point->rigid_px));
    m_beat = beatText(*point, m_setup->camera.frame_rate_hz);
    m_words.ask();
}

void FilmedPanel::writeCaption()
{
    m_caption->setText(m_text);
    m_caption->setToolTip(m_beat);
    m_picture->setAccessibleDescription(m_beat.isEmpty() ? m_text : m_text + u' ' + m_beat);
}

void FilmedPanel::setStale(bool stale)
{
    m_picture->setStale(stale);
    m_caption->setEnabled(!stale);
}

QString FilmedPanel::text() const
{
    return m_caption->text();
}

}  // namespace stillbay::ui
