// SPDX-License-Identifier: MIT
#include "ui/map/map_view.h"

#include "core/assess/assess.h"
#include "core/response/at_throttle.h"
#include "core/setup/validate.h"
#include "ui/charts/chart_heading.h"
#include "ui/map/map_chart.h"
#include "ui/map/map_controls.h"
#include "ui/map/map_preview.h"
#include "ui/map/map_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/tall_scroll.h"
#include "ui/widgets/thin_progress.h"
#include "ui/widgets/two_sides.h"
#include "ui/widgets/verdict.h"

#include <QHideEvent>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kProgressHeight = 6;
constexpr std::chrono::milliseconds kPause(200);  // lets a drag end before a map begins
constexpr std::chrono::milliseconds kGlance(60);  // at a place, before it is looked at
constexpr int kLeastChart = 44;                   // characters that the map needs
constexpr int kRoomyChart = 64;  // that it has at least while its settings stand beside it

// As the variable's field shows it.
double rounded(Variable variable, double value)
{
    const double grain = std::pow(10.0, -fieldOf(variable).decimals);
    return std::round(value / grain) * grain;
}

bool isOnRim(const DesignMap& map, std::size_t node)
{
    const auto isEnd = [](std::size_t k, std::size_t count) {
        return k == 0 || k + 1 == count;
    };
    return isEnd(node / map.y.count, map.x.count) || isEnd(node % map.y.count, map.y.count);
}

}  // namespace

MapView::MapView(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_chart(new MapChart),
      m_controls(new MapControls),
      m_verdict(new Verdict),
      m_takeBest(new QPushButton(tr("&Take the best here"))),
      m_refusal(new ProblemLabel),
      m_state(new QLabel),
      m_progress(new ThinProgress(tr("Progress of the map"), kProgressHeight)),
      m_preview(new MapPreview),
      m_settings(makeRight()),
      m_settingsButton(new QToolButton),
      m_job({.done =
                 [this](const Result<Answer>& answer) {
                     if (answer)
                         return keep(*answer);
                     m_failure = answer.error();
                     drawMap();
                 },
             .interim = [this](const Answer& answer) { keep(answer); },
             .advanced =
                 [this](int done, int total) {
                     m_progress->advance(done, total);
                 }},
            kPause),
      m_look({.done =
                  [this](const Result<TuneFigures>& figures) {
                      m_preview->display(designText(m_controls->across().variable, m_pointed->x(),
                                                    m_controls->up().variable, m_pointed->y()),
                                         m_document.setup().limits, figures);
                  }},
             kGlance)
{
    layOutTwoSides(*this, makeLeft(), m_settings, QStringLiteral("view.mapColumns"));

    connect(&m_document, &Document::setupChanged, this, &MapView::craftChanged);
    connect(m_controls, &MapControls::axesChanged, this, &MapView::refresh);
    connect(m_controls, &MapControls::showsChanged, this, &MapView::drawMap);
    connect(m_chart, &MapChart::tuneWanted, this, &MapView::take);
    connect(m_chart, &MapChart::pointedAt, this, &MapView::look);
    connect(m_chart, &MapChart::pointedAway, this, &MapView::lookAway);
    connect(m_settingsButton, &QToolButton::toggled, this, &MapView::showSettings);
    connect(m_takeBest, &QPushButton::clicked, this, &MapView::takeBest);
}

QWidget* MapView::makeLeft()
{
    auto* const left = new QWidget;
    auto* const layout = new QVBoxLayout(left);
    layout->setContentsMargins(6, 6, 6, 6);
    layout->setSpacing(4);
    auto* const heading = new ChartHeading(
        *m_chart, tr("wobble of every tune; click to take one, or arrow keys and Enter"));
    m_settingsButton->setText(tr("Settings"));
    m_settingsButton->setAccessibleName(tr("Settings of the map"));
    m_settingsButton->setToolTip(
        tr("Shows beside the map what it sets, and the best on it, where there is room."));
    m_settingsButton->setObjectName(QStringLiteral("view.mapSettings"));
    m_settingsButton->setCheckable(true);
    m_settingsButton->setChecked(true);
    m_settingsButton->setFocusPolicy(Qt::StrongFocus);
    heading->add(m_settingsButton);
    layout->addWidget(heading);
    layout->addWidget(m_chart, 1);
    layout->addWidget(m_preview);
    layout->addWidget(m_refusal);
    return left;
}

QWidget* MapView::makeRight()
{
    m_takeBest->setToolTip(tr("Gives the craft the values at the star; one step to undo."));
    m_state->setAccessibleName(tr("State of the map"));
    m_state->setWordWrap(true);

    auto* const right = new QWidget;
    right->setMinimumWidth(28 * fontMetrics().averageCharWidth());
    auto* const layout = new QVBoxLayout(right);
    layout->setContentsMargins(8, 8, 8, 8);
    layout->setSpacing(8);
    layout->addWidget(m_verdict);
    layout->addWidget(m_takeBest);
    layout->addSpacing(6);
    layout->addWidget(m_controls);
    layout->addStretch(1);
    layout->addWidget(m_state);
    layout->addWidget(m_progress);
    return new TallScroll(right);
}

MapView::Key MapView::keyNow() const
{
    Key key{m_document.setup(), m_controls->across(), m_controls->up(), m_controls->keepsLevel()};
    Design design = wholeDesignOf(key.craft);
    for (const MapAxis& axis : {key.x, key.y})  // amid the map, where it can be hung
        setValue(design, axis.variable, axis.at(axis.count / 2));
    key.craft = withDesign(std::move(key.craft), hanging().hung(std::move(design)));
    key.craft.name.clear();
    key.craft.notes.clear();
    key.craft.flight.notes.clear();
    key.craft.tunes.clear();
    key.craft.limits = {};  // they colour the map, and nothing more
    return key;
}

Hanging MapView::hanging() const
{
    return hangingOf(m_document.setup(), m_controls->keepsLevel());
}

void MapView::lookAround()
{
    m_controls->offer(m_document.setup());
    if (isVisible())
        refresh();
}

// A design that left the map, or is mounted in another way, gets the usual ranges around itself.
// While nobody looks, a drag elsewhere must not pay for the map.
void MapView::craftChanged()
{
    if (!m_document.hasCraft() || !isVisible())
        return;
    if (m_pointed)  // the same place on the changed craft
        look(m_pointed->x(), m_pointed->y());
    const Design design = wholeDesignOf(m_document.setup());
    bool isInside =
        m_wanted.has_value() && design.mounts.drilled() == m_wanted->craft.mounts.drilled();
    for (const MapAxis& axis : {m_controls->across(), m_controls->up()})
        isInside = isInside && canSet(design.mounts, axis.variable) &&
                   valueOf(design, axis.variable) >= axis.from &&
                   valueOf(design, axis.variable) <= axis.to;
    if (!isInside)
        m_controls->offer(m_document.setup());
    refresh();
}

void MapView::refresh()
{
    if (!m_document.hasCraft())
        return;
    Key key = keyNow();
    if (m_wanted != key) {
        m_wanted = std::move(key);
        m_failure.reset();
    }
    if (!m_shown || m_shown->x != m_wanted->x || m_shown->y != m_wanted->y) {
        m_shown.reset();
        m_answer.reset();
        m_chart->setAxes(m_wanted->x, m_wanted->y);
    }
    if (isVisible())
        compute();
    drawMap();
}

bool MapView::isCurrent() const
{
    return m_answer && m_answer->isWhole && m_shown == m_wanted;
}

void MapView::compute()
{
    m_job.want(*m_wanted,
               [setup = m_document.setup(), x = m_wanted->x, y = m_wanted->y,
                hanging = hanging()](const Caller<Answer>& caller) -> Result<Answer> {
                   if (const auto valid = validate(setup); !valid)
                       return tl::unexpected(valid.error());
                   const auto evaluator = std::make_shared<const Evaluator>(setup);
                   auto map = mapDesigns(
                       *evaluator, wholeDesignOf(setup), x, y, 0, caller.stop, caller.progress,
                       [&](const DesignMap& coarse) {
                           caller.interim({coarse, evaluator, false});
                       },
                       hanging);
                   if (!map)
                       return tl::unexpected(map.error());
                   return Answer{*std::move(map), evaluator, true};
               });
}

// Only what is wanted arrives.
void MapView::keep(const Answer& answer)
{
    m_shown = m_wanted;
    m_answer = answer;
    drawMap();
}

void MapView::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    craftChanged();
}

void MapView::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    m_job.drop();
    lookAway();
}

void MapView::drawMap()
{
    if (!m_document.hasCraft())
        return;
    if (m_answer)
        m_chart->setMap(m_answer->map, m_controls->shows(), m_document.setup().limits);
    drawMarks();
    display();
    showState();
}

void MapView::drawMarks()
{
    const Variable x = m_controls->across().variable, y = m_controls->up().variable;
    const Setup& setup = m_document.setup();
    const Design present = wholeDesignOf(setup);
    std::vector<MapMark> kept;
    for (const Tune& tune : setup.tunes) {
        Design design = tune.design;
        if (!design.heaviest_part_mm)
            design.heaviest_part_mm = present.heaviest_part_mm;
        MapMark mark{valueOf(design, x), valueOf(design, y), QString::fromStdString(tune.name)};
        Design moved = present;
        for (const Variable variable : {x, y})
            if (canSet(present.mounts, variable))
                setValue(moved, variable, valueOf(design, variable));
        mark.isElsewhere = !(hanging().hung(std::move(moved)) == design);
        kept.push_back(std::move(mark));
    }
    m_chart->setMarks({valueOf(present, x), valueOf(present, y), {}}, kept);
}

void MapView::display()
{
    const auto best = m_answer ? bestOn(m_answer->map, m_controls->shows()) : std::nullopt;
    m_takeBest->setEnabled(best && m_shown == m_wanted);
    if (m_failure)
        m_verdict->display(Verdict::Kind::Failure, tr("No map for this craft"),
                           displayText(m_failure->what));
    else if (!m_answer)
        m_verdict->display(Verdict::Kind::None, tr("Looking…"), {});
    else if (!best)
        m_verdict->display(Verdict::Kind::Failure, tr("Nothing here holds"),
                           mapSentence(m_answer->map, m_controls->shows()));
    else
        showBest(*best);
}

void MapView::showBest(std::size_t node)
{
    const Setup& setup = m_document.setup();
    const MapShows shows = m_controls->shows();
    const double wobble = shownWobble_px(m_answer->map.cells[node], shows);
    const auto now = m_answer->evaluator->evaluate(wholeDesignOf(setup));
    const QString present =
        now.feasible()
            ? tr("The present tune: %1 px.").arg(plainNumber(shownWobble_px(now, shows), 2))
            : tr("The present tune is %1.").arg(verdictSentence(now));
    Status status = m_answer->evaluator->craft();
    status.grade = gradeOf(wobble, setup.limits.faint_px, setup.limits.bad_px);
    const QString found = plainNumber(wobble, 2);
    m_verdict->display(
        Verdict::kindOf(status),
        status.violated.empty()
            ? tr("Best here: %1 px").arg(found)
            : tr("Best here: %1 px, but %2").arg(found, displayText(status.violated.front().text)),
        (!hasMargin(m_answer->map, node) ? tr("At %1, and a cut a little off does not hold. %2")
         : isOnRim(m_answer->map, node)  ? tr("At %1, on the edge of the map: look further. %2")
                                         : tr("At %1. %2"))
            .arg(nodeText(m_answer->map, node), present));
}

void MapView::showState()
{
    const bool isDue = isVisible() && isComputing();
    m_progress->setVisible(isDue);
    m_chart->setStale(!m_answer || m_shown != m_wanted);
    m_verdict->setStale(m_answer && m_shown != m_wanted);
    m_state->setText(isDue ? tr("Computing…") : QString());
}

// The craft with the tune that a node stands for, hung as the map hangs it.
Setup MapView::craftAt(double x, double y) const
{
    const Setup& setup = m_document.setup();
    Design design = wholeDesignOf(setup);
    setValue(design, m_controls->across().variable, rounded(m_controls->across().variable, x));
    setValue(design, m_controls->up().variable, rounded(m_controls->up().variable, y));
    return withDesign(setup, hanging().hung(std::move(design)));
}

// What is out of the question is refused with its reason; what is out of the limits of a field, by
// its name.
void MapView::take(double x, double y)
{
    const Setup there = craftAt(x, y);
    const Variable across = m_controls->across().variable, up = m_controls->up().variable;
    const auto violated =
        m_answer ? m_answer->evaluator->evaluate(wholeDesignOf(there)).violated : std::nullopt;
    if (violated && *violated != Constraint::OutsideLimits) {
        m_refusal->refuse(displayText(violationText(*violated)));
        return;
    }
    m_refusal->display(m_document.edit(
        tr("Take %1").arg(designText(across, rounded(across, x), up, rounded(up, y))), {},
        [&there](Setup& setup) { setup = there; }));
}

void MapView::look(double x, double y)
{
    m_pointed = QPointF(x, y);
    const Setup there = craftAt(x, y);
    if (m_look.wanted() != there)
        m_preview->showDue(
            designText(m_controls->across().variable, x, m_controls->up().variable, y));
    m_look.want(there, [there](const Caller<TuneFigures>&) -> Result<TuneFigures> {
        Result<Assessment> assessment = assess(there);
        if (!assessment)
            return tl::unexpected<Error>(assessment.error());
        return figuresOf(*std::move(assessment));
    });
}

void MapView::lookAway()
{
    m_pointed.reset();
    m_look.drop();
    m_preview->clear();
}

// The map comes first where there is no room for both.
void MapView::showSettings()
{
    const int needed =
        m_settings->minimumSizeHint().width() + kRoomyChart * fontMetrics().averageCharWidth();
    m_settings->setVisible(m_settingsButton->isChecked() && width() >= needed);
}

void MapView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    showSettings();
}

QSize MapView::minimumSizeHint() const
{
    return {kLeastChart * fontMetrics().averageCharWidth(), QWidget::minimumSizeHint().height()};
}

void MapView::takeBest()
{
    if (const auto best = bestOn(m_answer->map, m_controls->shows()))
        take(m_answer->map.x.at(*best / m_answer->map.y.count),
             m_answer->map.y.at(*best % m_answer->map.y.count));
}

QString MapView::sentences() const
{
    return m_verdict->text();
}

}  // namespace stillbay::ui
