// SPDX-License-Identifier: MIT
#include "ui/bench/tube_bench.h"

#include "core/base/units.h"
#include "core/design/design.h"
#include "core/response/level.h"
#include "core/setup/cut_length.h"
#include "core/setup/fields.h"
#include "core/setup/mount_layout.h"
#include "core/setup/sources.h"
#include "ui/bench/tube_drawing.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/quantity.h"

#include <QAction>
#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSlider>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace stillbay::ui {
namespace {

constexpr int kSpacing = 4;
constexpr int kLeastSlider = 60;
constexpr const char* kLengthPath = "mounts.free_length_mm";
constexpr const char* kStretchPath = "mounts.stretch";
constexpr double kLengthStep_mm = 0.5;
constexpr double kStretchStep_percent = 1.0;
constexpr double kGramForce_n = kGravity / 1000.0;  // of one gram-force

// The reach of a slider: what benches usually see, wider where the value lies outside.
struct Reach {
    double from, to;
};

Reach including(Reach usual, double value)
{
    return {std::min(usual.from, std::floor(value)), std::max(usual.to, std::ceil(value))};
}

constexpr Reach kUsualLength_mm{5.0, 60.0};

Reach usualStretch_percent(const TubeKind& tube)
{
    return {0.0, std::max(20.0, kPercent * (tube.max_stretch - 1.0))};
}

const Field<Mounts>& mountsField(std::string_view key)
{
    const auto fields = fieldsOf<Mounts>();
    return *std::find_if(fields.begin(), fields.end(),
                         [key](const Field<Mounts>& field) { return field.key == key; });
}

void showOn(QSlider& slider, Reach reach, double step, double value)
{
    const QSignalBlocker quiet(slider);
    if (!slider.isSliderDown())  // the ground must not move under a drag
        slider.setRange(static_cast<int>(std::lround(reach.from / step)),
                        static_cast<int>(std::lround(reach.to / step)));
    slider.setValue(static_cast<int>(std::lround(value / step)));
}

}  // namespace

TubeBench::TubeBench(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_length(makeVariable(tr("Free length"), tr("mm"), kLengthStep_mm)),
      m_stretch(makeVariable(tr("Stretch"), tr("%"), kStretchStep_percent)),
      m_grip(new NumberBox(this)),
      m_explanation(new ElidedLabel(Qt::AlignLeft, this)),
      m_drawing(new TubeDrawing(this)),
      m_facts(new FigureTable(this)),
      m_figures(Paced::Pace::TenASecond, [this] { writeFacts(); }),
      m_level(new QPushButton(tr("Hang it &level"), this)),
      m_refusal(new ProblemLabel(this))
{
    makeVariables();
    makeGrip();
    m_facts->setAccessibleName(tr("Tube figures"));
    m_level->setToolTip(tr(
        "Finds the elevations of the tubes, and small differences of stretch, with which the "
        "bay rests where it is drawn; in a drilled craft their free lengths. One step to undo."));
    connect(m_level, &QPushButton::clicked, this, &TubeBench::hangLevel);
    layOut();
    writeHeading();
    connect(&m_document, &Document::setupChanged, this, &TubeBench::refresh);
    refresh();
}

void TubeBench::makeVariables()
{
    const Field<Mounts>& length = mountsField("free_length_mm");
    const Field<Mounts>& stretch = mountsField("stretch");
    m_length.box->setRange(length.min, length.max);
    m_stretch.box->setRange(kPercent * (stretch.min - 1.0), kPercent * (stretch.max - 1.0));
    m_length.box->setToolTip(QStringLiteral("<p>%1</p>").arg(displayText(length.meaning)));
    m_stretch.box->setToolTip(
        QStringLiteral("<p>%1</p>")
            .arg(tr("How much longer the tube is fitted than it lies relaxed. With drilled holes "
                    "it sets the free length.")));
    connectVariable(m_length, kLengthStep_mm, [this](double value) { editLength(value); });
    connectVariable(m_stretch, kStretchStep_percent, [this](double value) { editStretch(value); });
    addShortcut(*m_length.slider, tr("Tube bench: to the free length"), Qt::CTRL | Qt::Key_L);
    addShortcut(*m_stretch.slider, tr("Tube bench: to the stretch"),
                Qt::CTRL | Qt::SHIFT | Qt::Key_L);
}

// From anywhere in the window; the help lists it among the other keys.
void TubeBench::addShortcut(QSlider& slider, const QString& name, const QKeySequence& keys)
{
    auto* const action = new QAction(name, this);
    action->setShortcut(keys);
    connect(action, &QAction::triggered, &slider,
            [&slider] { slider.setFocus(Qt::ShortcutFocusReason); });
    addAction(action);
    slider.setToolTip(
        tr("Arrow keys move it. From anywhere: %1").arg(keys.toString(QKeySequence::NativeText)));
}

void TubeBench::makeGrip()
{
    m_grip->setRange(0.0, kLargestGrip_mm);
    m_grip->setUnit(tr("mm"));
    m_grip->setLeastDecimals(1);
    m_grip->setAccessibleName(tr("Grip of each clamp"));
    m_grip->setToolTip(tr("How much tube each clamp holds; only the cut length depends on it."));
    m_grip->show(kUsualGrip_mm);
    connect(m_grip, &NumberBox::valueChanged, this, &TubeBench::showFacts);
}

void TubeBench::makeHeading()
{
    auto* const title = new QLabel(tr("Tube bench"), this);
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    auto* const gripLabel = new QLabel(tr("Clamp grip"), this);
    gripLabel->setBuddy(m_grip);
    m_heading = new QHBoxLayout;
    m_heading->setContentsMargins(4, 0, 0, 0);
    m_heading->setSpacing(6);
    m_heading->addWidget(title);
    m_heading->addWidget(m_explanation, 1);
    m_heading->addWidget(gripLabel);
    m_heading->addWidget(m_grip);
    m_heading->addWidget(m_level);
}

void TubeBench::layOut()
{
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(2 * kSpacing);
    grid->setVerticalSpacing(kSpacing);
    makeHeading();
    grid->addLayout(m_heading, 0, 0, 1, 4);
    const auto addRow = [grid, this](int row, const QString& name, const Variable& variable) {
        auto* const label = new QLabel(name, this);
        label->setBuddy(variable.box);
        grid->addWidget(label, row, 0);
        grid->addWidget(variable.slider, row, 1);
        grid->addWidget(variable.box, row, 2);
    };
    addRow(1, tr("Free length"), m_length);
    addRow(2, tr("Stretch"), m_stretch);
    grid->addWidget(m_refusal, 3, 0, 1, 4);
    grid->addWidget(m_drawing, 4, 0, 1, 3);
    grid->addWidget(m_facts, 1, 3, 4, 1, Qt::AlignTop);
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(4, 1);
}

TubeBench::Variable TubeBench::makeVariable(const QString& name, const QString& unit, double step)
{
    Variable variable{new QSlider(Qt::Horizontal, this), new NumberBox(this)};
    variable.slider->setAccessibleName(tr("%1, slider").arg(name));
    variable.slider->setPageStep(10);
    variable.slider->setFocusPolicy(Qt::StrongFocus);
    variable.box->setAccessibleName(tr("%1 of the tubes").arg(name));
    variable.box->setUnit(unit);
    variable.box->setSingleStep(step);
    variable.box->setLeastDecimals(1);
    variable.box->setMinimumWidth(100);
    return variable;
}

void TubeBench::connectVariable(Variable& variable, double step,
                                const std::function<void(double)>& edit)
{
    connect(variable.slider, &QSlider::valueChanged, this,
            [step, edit](int ticks) { edit(step * ticks); });
    connect(variable.slider, &QSlider::sliderPressed, &m_document, &Document::endGesture);
    connect(variable.slider, &QSlider::sliderReleased, this, [this] {
        m_document.endGesture();
        refresh();
    });
    connect(variable.box, &NumberBox::valueChanged, this, edit);
    connect(variable.box, &NumberBox::editingFinished, &m_document, &Document::endGesture);
    connect(variable.box, &NumberBox::refused, m_refusal, &ProblemLabel::refuse);
}

void TubeBench::editLength(double length_mm)
{
    report(m_document.edit(tr("change the free length"), QLatin1String(kLengthPath),
                           [=](Setup& setup) {
                               setFreeLength(setup.mounts, length_mm);
                               dropSource(setup, kLengthPath);
                           }));
}

void TubeBench::editStretch(double percent)
{
    const double stretch = std::round(1e6 * (1.0 + percent / kPercent)) / 1e6;
    const bool drilled = m_document.setup().mounts.drilled();
    report(m_document.edit(drilled ? tr("change the free length") : tr("change the stretch"),
                           QLatin1String(drilled ? kLengthPath : kStretchPath), [=](Setup& setup) {
                               setDrawnStretch(setup.mounts, stretch);
                               dropSource(setup, drilled ? kLengthPath : kStretchPath);
                           }));
}

void TubeBench::hangLevel()
{
    const auto levelled = level(m_document.setup());
    if (!levelled) {
        m_refusal->refuse(displayText(levelled.error().what));
        return;
    }
    report(m_document.edit(tr("hang it level"), {},
                           [&](Setup& setup) { setup.mounts = levelled->mounts; }));
    if (levelled->why)
        m_refusal->format(displayText(levelled->why->text));
}

void TubeBench::report(const Result<void>& done)
{
    if (!done)
        refresh();
    m_refusal->display(done);
}

void TubeBench::setAssessment(const Assessment& assessment)
{
    m_tension_n = assessment.tube.tension;
    m_rest = assessment.rest;
    showFacts();
}

void TubeBench::clearAssessment()
{
    m_rest.reset();
    showFacts();
}

double TubeBench::grip_mm() const
{
    return m_grip->value();
}

void TubeBench::setGrip_mm(double grip_mm)
{
    m_grip->show(grip_mm);
    showFacts();
}

void TubeBench::refresh()
{
    m_refusal->hide();
    const Setup& setup = m_document.setup();
    const double length = setup.mounts.free_length_mm;
    const double stretch = kPercent * (drawnStretch(setup.mounts) - 1.0);
    // With drilled holes the stretch is a result; a tenth of a percent tells all of it.
    const double shown = setup.mounts.drilled() ? std::round(10.0 * stretch) / 10.0 : stretch;
    m_length.box->show(length);
    m_stretch.box->show(shown);
    showOn(*m_length.slider, including(kUsualLength_mm, length), kLengthStep_mm, length);
    showOn(*m_stretch.slider, including(usualStretch_percent(setup.tube), stretch),
           kStretchStep_percent, stretch);
    showFacts();
}

// Where the bay is at rest, in a few words.
QString TubeBench::placeText() const
{
    if (restsAsDrawn(m_rest->shift, m_rest->rotation))
        return tr("as drawn");
    const double rise_mm = m_rest->shift.z() / unit::mm;
    const QString way = QLocale().toString(std::abs(rise_mm), 'f', 1);
    return rise_mm < 0 ? tr("%1 mm down").arg(way) : tr("%1 mm up").arg(way);
}

// Of the planned tubes, each of which may have its own; of drilled ones the mean.
QString TubeBench::fittedElevation(const Setup& setup)
{
    const auto whole = [](double angle_deg) {
        return QLocale().toString(std::round(angle_deg) + 0.0, 'f', 0);
    };
    const std::vector<MountPoint>& points = setup.mounts.points;
    if (setup.mounts.drilled() || points.empty())
        return whole(valueOf(designOf(setup), stillbay::Variable::Elevation));
    const auto [least, most] = std::minmax_element(
        points.begin(), points.end(),
        [](const MountPoint& a, const MountPoint& b) { return a.elevation_deg < b.elevation_deg; });
    const QString from = whole(least->elevation_deg), to = whole(most->elevation_deg);
    return from == to ? from : tr("%1 to %2").arg(from, to);
}

// What fitting gives, and what is left of it once the bay is let go.
std::vector<FigureTable::Row> TubeBench::comparison(const Setup& setup) const
{
    const QLocale locale;
    const auto atRest = [&](auto figure, int decimals) {
        const auto [least, most] = std::minmax_element(
            m_rest->tubes.begin(), m_rest->tubes.end(),
            [&](const TubeAtRest& a, const TubeAtRest& b) { return figure(a) < figure(b); });
        const QString from = locale.toString(figure(*least), 'f', decimals),
                      to = locale.toString(figure(*most), 'f', decimals);
        return from == to ? from : tr("%1 to %2").arg(from, to);
    };
    const auto percent = [](const TubeAtRest& tube) {
        return kPercent * (tube.stretch - 1.0);
    };
    const auto newton = [](const TubeAtRest& tube) {
        return tube.tension;
    };
    const auto gram = [](const TubeAtRest& tube) {
        return tube.tension / kGramForce_n;
    };
    const auto degree = [](const TubeAtRest& tube) {
        return tube.elevation / unit::deg;
    };
    return {
        {QString(), tr("as fitted"), tr("at rest")},
        {tr("Stretch"), locale.toString(kPercent * (drawnStretch(setup.mounts) - 1.0), 'f', 0),
         tr("%1 %").arg(atRest(percent, 0))},
        {tr("Tension"), locale.toString(m_tension_n, 'f', 1), tr("%1 N").arg(atRest(newton, 1))},
        {QString(), locale.toString(std::round(m_tension_n / kGramForce_n), 'f', 0),
         tr("%1 gf").arg(atRest(gram, 0))},
        {tr("Elevation"), fittedElevation(setup), tr("%1°").arg(atRest(degree, 0))},
        {tr("Bay"), tr("as drawn"), placeText()}};
}

TubeShape TubeBench::shape() const
{
    const Setup& setup = m_document.setup();
    const Mounts& mounts = setup.mounts;
    return {setup.tube.outer_diameter_mm,
            setup.tube.bore_mm,
            mounts.free_length_mm,
            mounts.free_length_mm * drawnStretch(mounts),
            m_grip->value(),
            mounts.ends};
}

void TubeBench::showFacts()
{
    m_drawing->setShape(shape());
    m_level->setEnabled(!m_rest || !restsAsDrawn(m_rest->shift, m_rest->rotation));
    m_figures.ask();
}

void TubeBench::writeFacts()
{
    const Setup& setup = m_document.setup();
    const TubeShape shape = this->shape();
    std::vector<FigureTable::Row> rows{
        {tr("Cut"), QString(), measureText(shape.cut_mm())},
        {setup.mounts.drilled() ? tr("Holes (mean)") : tr("Hole spacing"), QString(),
         measureText(shape.fitted_mm)}};
    if (m_rest)
        for (FigureTable::Row& row : comparison(setup))
            rows.push_back(std::move(row));
    m_facts->display(rows);
    writeHeading();
}

// What is cut and drilled, and how taut it is.
QString TubeBench::factsLine() const
{
    const TubeShape shape = this->shape();
    return tr("cut %1, holes %2, tension %3 N")
        .arg(measureText(shape.cut_mm()), measureText(shape.fitted_mm),
             QLocale().toString(m_tension_n, 'f', 1));
}

void TubeBench::writeHeading()
{
    m_explanation->setText(m_folded ? factsLine() : tr("drag, and watch the curves move"));
}

void TubeBench::setFolded(bool folded)
{
    if (m_folded == folded)
        return;
    m_folded = folded;
    m_drawing->setVisible(!folded);
    m_facts->setVisible(!folded);
    writeHeading();
}

int TubeBench::leastHeight(bool whole) const
{
    const int sliders =
        m_length.box->sizeHint().height() + kSpacing + m_stretch.box->sizeHint().height();
    const int below = kSpacing + m_drawing->minimumSizeHint().height();
    return m_heading->minimumSize().height() + kSpacing +
           (whole ? std::max(sliders + below, m_facts->height()) : sliders);
}

int TubeBench::leastWidth(bool whole) const
{
    const int left = kLeastSlider + m_drawing->minimumSizeHint().width();
    return std::max(m_heading->minimumSize().width(),
                    whole ? left + 2 * kSpacing + m_facts->width() : left);
}

}  // namespace stillbay::ui
