// SPDX-License-Identifier: MIT
#include "ui/bay/bay_view.h"

#include "core/assess/texts.h"
#include "core/base/rotation.h"
#include "core/base/units.h"
#include "ui/bay/bay_canvas.h"
#include "ui/bay/bay_legend.h"
#include "ui/bay/elastic_marks.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stillbay::ui {
namespace {

constexpr int kFrame_ms = 33;
constexpr double kSwing_s = 1.6;            // of one drawn swing, whatever the mode's frequency
constexpr double kLargest_mm = 10.0;        // drawn way of the bay's farthest point, about
constexpr double kMotionRadius_mm = 100.0;  // what Assessment's motions multiply rotations by
constexpr int kModes = 6;
constexpr int kShortCombo = 9;  // characters, where there is little room
constexpr int kLittleHeight = 460;

enum Pose { AsDrawn, AtRest };

double reach_mm(const Setup& setup, const Vector3d& centre_mm)
{
    double reach = 1.0;
    for (const Part& part : setup.bay.parts) {
        Vector3d way;
        for (Eigen::Index k = 0; k < 3; ++k)
            way[k] = std::abs(part.centre_mm[static_cast<std::size_t>(k)] - centre_mm[k]) +
                     0.5 * part.size_mm[static_cast<std::size_t>(k)];
        reach = std::max(reach, way.norm());
    }
    return reach;
}

}  // namespace

BayView::BayView(QWidget* parent)
    : QWidget(parent),
      m_canvas(new BayCanvas),
      m_pose(new QComboBox),
      m_motion(new QComboBox),
      m_controls(makeControls()),
      m_legend(new BayLegend),
      m_text(new QuietLabel)
{
    m_text->setAccessibleName(tr("What the drawing shows"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 8, 8);
    layout->setSizeConstraint(QLayout::SetNoConstraint);  // the rows below one another are narrower
    layout->addLayout(m_controls);
    layout->addWidget(m_canvas, 1);
    layout->addWidget(m_legend);
    layout->addWidget(m_text);
    m_frames.setInterval(kFrame_ms);
    connect(&m_frames, &QTimer::timeout, this, &BayView::place);
    connect(m_canvas, &BayCanvas::subjectChanged, this, &BayView::nameSubject);
    for (QComboBox* box : {m_pose, m_motion})
        connect(box, &QComboBox::currentIndexChanged, this, [this] {
            runOrStop();
            showText();
        });
    nameSubject();
}

// One row, or two where there is little room.
QBoxLayout* BayView::makeControls()
{
    auto* const rows = new QBoxLayout(QBoxLayout::LeftToRight);
    rows->addLayout(makeChoices());
    rows->addStretch(1);
    rows->addLayout(makeViewButtons());
    return rows;
}

QHBoxLayout* BayView::makeChoices()
{
    m_pose->addItems({tr("as drawn"), tr("at rest")});
    m_pose->setCurrentIndex(AtRest);
    m_pose->setObjectName(QStringLiteral("view.bayPose"));
    m_pose->setAccessibleName(tr("Where the bay is shown"));
    m_pose->setToolTip(tr("As it is held while it is fitted, or where it comes to rest."));
    m_motion->addItem(tr("still"));
    for (int k = 0; k < 2 * kModes; ++k)
        m_motion->addItem(QString());
    m_motion->setAccessibleName(tr("Motion to show"));
    m_motion->setToolTip(tr("One of the ways the bay swings by itself."));
    m_motion->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_motion->setMinimumContentsLength(kShortCombo);
    nameModes();
    auto* const row = new QHBoxLayout;
    for (const auto& [text, box] :
         {std::pair{tr("&Bay"), m_pose}, std::pair{tr("&Motion"), m_motion}}) {
        auto* const label = new QLabel(text);
        label->setBuddy(box);
        row->addWidget(label);
        row->addWidget(box);
        row->addSpacing(6);
    }
    row->addStretch(1);
    return row;
}

QHBoxLayout* BayView::makeViewButtons()
{
    struct Side {
        QString text, tip;
        ViewPoint view;
    };
    auto* const row = new QHBoxLayout;
    row->setSpacing(4);
    for (const Side& side :
         {Side{tr("Oblique"), tr("Look from the front left, from above."), ViewPoint{}},
          Side{tr("Front"), tr("Look at the camera, against the flight."), {0.0, 0.0}},
          Side{tr("Left"), tr("Look from the left side."), {90.0, 0.0}},
          Side{tr("Above"), tr("Look from above, forward is up."), {180.0, 90.0}}}) {
        auto* const button = new QToolButton;
        button->setText(side.text);
        button->setToolTip(side.tip);
        button->setAccessibleName(tr("View: %1").arg(side.text));
        button->setFocusPolicy(Qt::StrongFocus);
        connect(button, &QToolButton::clicked, m_canvas, [this, view = side.view] {
            m_canvas->setView(view);
            m_canvas->setZoom(1.0);
        });
        row->addWidget(button);
    }
    m_subject = new QToolButton;
    m_subject->setFocusPolicy(Qt::StrongFocus);
    connect(m_subject, &QToolButton::clicked, m_canvas, [this] {
        m_canvas->setSubject(m_canvas->subject() == BayCanvas::Subject::Craft
                                 ? BayCanvas::Subject::Bay
                                 : BayCanvas::Subject::Craft);
    });
    row->addSpacing(6);
    row->addWidget(m_subject);
    row->addStretch(0);
    return row;
}

// The button offers what is not shown.
void BayView::nameSubject()
{
    const bool whole = m_canvas->subject() == BayCanvas::Subject::Craft;
    m_subject->setText(whole ? tr("Zoom to bay") : tr("Whole craft"));
    m_subject->setToolTip(whole ? tr("Bay and tubes fill the drawing.")
                                : tr("The whole craft fills the drawing."));
}

void BayView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fitRoom();
}

void BayView::fitRoom()
{
    int wide = layout()->contentsMargins().left() + layout()->contentsMargins().right();
    for (const int row : {0, 2})
        wide += m_controls->itemAt(row)->layout()->sizeHint().width() + m_controls->spacing();
    const auto direction = width() < wide ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight;
    if (m_controls->direction() != direction)
        m_controls->setDirection(direction);
    showText();
}

// Keeps which entry is chosen while their numbers change.
void BayView::nameModes()
{
    const QLocale locale;
    for (int k = 0; k < 2 * kModes; ++k) {
        const bool flight = k < kModes;
        if (!m_assessment) {
            m_motion->setItemText(1 + k, tr("no modes"));
            continue;
        }
        const ModeFigures& mode = flight
                                      ? m_assessment->flight[static_cast<std::size_t>(k)]
                                      : m_assessment->bench[static_cast<std::size_t>(k - kModes)];
        const QString hertz = locale.toString(mode.frequency_hz, 'f', 1);
        m_motion->setItemText(
            1 + k, flight ? tr("in flight, %1 Hz: %2").arg(hertz, displayText(mode.text))
                          : tr("on the bench, %1 Hz: %2").arg(hertz, displayText(mode.text)));
    }
}

const ModeFigures* BayView::mode() const
{
    const int k = m_motion->currentIndex() - 1;
    if (!m_assessment || k < 0)
        return nullptr;
    return k < kModes ? &m_assessment->flight[static_cast<std::size_t>(k)]
                      : &m_assessment->bench[static_cast<std::size_t>(k - kModes)];
}

void BayView::setResult(const Setup& setup, const Result<Assessment>& assessment)
{
    m_setup = setup;
    m_assessment.reset();
    if (assessment)
        m_assessment = *assessment;
    m_drawn = false;
    if (isVisible())
        draw();
}

// Hidden, it only keeps what it will show.
void BayView::draw()
{
    if (m_drawn)
        return;
    m_drawn = true;
    nameModes();
    m_canvas->setCraft(m_setup);
    lightUp();
    runOrStop();
    showText();
}

void BayView::showMode(bool flight, int index)
{
    m_motion->setCurrentIndex(1 + index + (flight ? 0 : kModes));
}

void BayView::setFocusedField(const QString& path)
{
    m_field = path;
    lightUp();
}

void BayView::lightUp()
{
    m_canvas->setLit(piecesOf(m_field, m_setup));
    m_everLit = m_everLit || !m_canvas->lit().empty();
    showText();
}

void BayView::setStale(bool stale)
{
    m_canvas->setStale(stale);
}

// Where the bay is at this instant: drawing or rest, and the mode's swing on top.
void BayView::place()
{
    BayPlace bay;
    if (m_assessment) {
        bay.centre_mm = m_assessment->bay.centre / unit::mm;
        if (m_pose->currentIndex() == AtRest) {
            bay.shift_mm = m_assessment->rest.shift / unit::mm;
            bay.R = rotationFromVector(m_assessment->rest.rotation);
        }
    }
    m_canvas->setStill(bay);
    m_canvas->setMassKnown(m_assessment.has_value());
    m_canvas->setGhost(m_assessment && m_pose->currentIndex() == AtRest);
    if (const ModeFigures* const shown = mode()) {
        const Vector3d way = shown->motion.head<3>();
        const Vector3d turn = shown->motion.tail<3>() / kMotionRadius_mm;  // per mm of way
        const double farthest = way.norm() + turn.norm() * reach_mm(m_setup, bay.centre_mm);
        const double phase =
            2.0 * std::numbers::pi * static_cast<double>(m_clock.elapsed()) / (1000.0 * kSwing_s);
        const double now_mm = kLargest_mm / farthest * std::sin(phase);
        bay.shift_mm += now_mm * way;
        bay.R = rotationFromVector(now_mm * turn) * bay.R;
    }
    m_canvas->setBay(bay);
    m_canvas->setElastic(m_assessment && m_pose->currentIndex() == AtRest
                             ? std::optional(elasticMarks(m_setup, *m_assessment))
                             : std::nullopt);
}

// How far the bay's centres are apart, and what the axes mean.
QString BayView::elasticText() const
{
    QStringList sentences;
    for (const Phrase& sentence : turningTexts(m_assessment->elastic_centre))
        sentences << displayText(sentence);
    sentences << tr(
        "Forces sideways through the roll axis have no arm to roll it, those fore and aft through "
        "the pitch axis none to pitch it.");
    return sentences.join(u' ');
}

void BayView::findSentences()
{
    m_sentences.clear();
    if (!m_assessment)
        m_sentences << tr("No answer for this craft: it is shown as drawn.");
    else if (m_pose->currentIndex() == AtRest)
        m_sentences << displayText(restText(m_assessment->rest)) << elasticText();
    else
        m_sentences << tr("The bay is shown where it is held while it is fitted.");
    if (const ModeFigures* const shown = mode())
        m_sentences << tr("This mode (%1) swings %2 times a second; here it is slowed down and "
                          "drawn larger than life.")
                           .arg(displayText(shown->text),
                                QLocale().toString(shown->frequency_hz, 'f', 1));
}

void BayView::showText()
{
    findSentences();
    showLegend();
    const bool little = height() < kLittleHeight;
    m_text->setText(little ? m_sentences.front() : text());
    m_text->setToolTip(little ? text() : QString());
    m_canvas->setAccessibleDescription(text() + u' ' + m_legend->text() + u'.');
}

void BayView::showLegend()
{
    using Sign = BayLegend::Sign;
    const bool rests = m_assessment && m_pose->currentIndex() == AtRest;
    std::vector<BayLegend::Entry> entries{
        {Sign::Solid, rests ? tr("bay at rest") : tr("bay as drawn")}};
    if (rests)
        entries.push_back({Sign::Ghost, tr("bay as drawn")});
    entries.push_back({Sign::Tube, tr("tube")});
    if (m_assessment)
        entries.push_back({Sign::CentreOfMass, tr("centre of mass")});
    if (rests) {
        entries.push_back({Sign::ElasticCentre, tr("elastic centre")});
        entries.push_back({Sign::ElasticAxes, tr("roll and pitch axis")});
    }
    entries.push_back({Sign::Sight, tr("camera’s view")});
    if (m_everLit)
        entries.push_back({Sign::Lit, tr("the field’s part"), !m_canvas->lit().empty()});
    m_legend->setEntries(entries);
}

void BayView::runOrStop()
{
    const bool swings = mode() && isVisible();
    if (swings && !m_frames.isActive()) {
        m_clock.start();
        m_frames.start();
    } else if (!swings) {
        m_frames.stop();
    }
    place();
}

void BayView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    draw();
    runOrStop();
}

void BayView::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    runOrStop();
}

}  // namespace stillbay::ui
