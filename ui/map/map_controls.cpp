// SPDX-License-Identifier: MIT
#include "ui/map/map_controls.h"

#include "ui/map/map_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/number_box.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::size_t kAbout = 64;  // steps along an axis

std::size_t placeOf(Variable variable)
{
    return static_cast<std::size_t>(variable);
}

// In the order in which builders want them.
constexpr std::array<Variable, kVariableCount> kOffered{
    Variable::FreeLength, Variable::Stretch,       Variable::Height,   Variable::Direction,
    Variable::SpreadX,    Variable::SpreadY,       Variable::BalanceX, Variable::BalanceZ,
    Variable::Hardness,   Variable::OuterDiameter, Variable::Elevation};

// What a side sets unless it was told otherwise: the first of these that is free.
constexpr std::array<std::array<Variable, 3>, 2> kUsual{{
    {Variable::FreeLength, Variable::Stretch, Variable::Hardness},  // across
    {Variable::Stretch, Variable::Hardness, Variable::FreeLength},  // up
}};

}  // namespace

MapControls::MapControls(QWidget* parent)
    : QWidget(parent),
      m_shows(new QComboBox),
      m_level(new QCheckBox(tr("Keep it &level"))),
      m_holes(new QLabel)
{
    m_shows->setObjectName(QStringLiteral("view.mapShows"));
    m_shows->setAccessibleName(tr("What the map shows"));
    m_shows->setToolTip(
        tr("The findings speak of the full pack; a search lowers the larger of "
           "both."));
    m_shows->addItems(
        {tr("Worst, full to empty pack"), tr("Worst at the full pack"), tr("Mean of both packs")});
    connect(m_shows, &QComboBox::currentIndexChanged, this, &MapControls::showsChanged);
    m_level->setObjectName(QStringLiteral("view.mapLevel"));
    m_level->setChecked(true);
    m_level->setToolTip(
        tr("Gives every tune the elevations, and small differences of stretch, with which the bay "
           "rests where it is drawn."));
    connect(m_level, &QCheckBox::toggled, this, [this] {
        fillVariables();
        for (Side& side : m_sides)
            showRange(side);
        emit axesChanged();
    });
    m_holes->setWordWrap(true);
    m_holes->setText(
        tr("The craft is drilled: its holes decide stretch, elevation and where the tubes are."));

    auto* const shows = new QWidget;
    auto* const showsLayout = new QVBoxLayout(shows);
    showsLayout->setContentsMargins(0, 0, 0, 0);
    auto* const label = new QLabel(tr("S&hows:"));
    label->setBuddy(m_shows);
    showsLayout->addWidget(label);
    showsLayout->addWidget(m_shows);

    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(10);
    layout->addLayout(makePairs());
    layout->addWidget(
        makeSide(m_sides[0], QStringLiteral("view.mapAcross"),
                 {tr("A&cross:"), tr("What runs across the map"),
                  tr("Smallest value across the map"), tr("Largest value across the map")}));
    layout->addWidget(makeSide(m_sides[1], QStringLiteral("view.mapUp"),
                               {tr("&Upwards:"), tr("What runs up the map"),
                                tr("Smallest value up the map"), tr("Largest value up the map")}));
    layout->addWidget(shows);
    layout->addWidget(m_level);
    layout->addWidget(m_holes);
    fillVariables();
}

// The two maps that tell most.
QHBoxLayout* MapControls::makePairs()
{
    auto* const row = new QHBoxLayout;
    const auto add = [&](const QString& meaning, Variable x, Variable y) {
        auto* const button = new QToolButton;
        const QString text = mapTitle(x, y);
        button->setText(text);
        button->setFocusPolicy(Qt::StrongFocus);
        button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        button->setAccessibleName(tr("Map of %1").arg(text));
        button->setToolTip(meaning);
        connect(button, &QToolButton::clicked, this, [this, x, y] { setVariables(x, y); });
        row->addWidget(button);
        return button;
    };
    add(tr("Which tube: how long, stretched how far."), Variable::FreeLength, Variable::Stretch);
    m_place = add(tr("Where the tubes hold the bay: how high, and pointing which way."),
                  Variable::Height, Variable::Direction);
    return row;
}

// As far as they are free.
void MapControls::setVariables(Variable across, Variable up)
{
    m_isFilling = true;
    const std::array variables{across, up};
    for (std::size_t which = 0; which < m_sides.size(); ++which)
        if (const int place = m_sides[which].variable->findData(static_cast<int>(variables[which]));
            place >= 0)
            m_sides[which].variable->setCurrentIndex(place);
    m_isFilling = false;
    variableChosen(0);
}

QWidget* MapControls::makeSide(Side& side, const QString& objectName, const SideTexts& text)
{
    const std::size_t which = &side == &m_sides[0] ? 0 : 1;
    side.variable = new QComboBox;
    side.variable->setObjectName(objectName);
    side.variable->setAccessibleName(text.variable);
    side.from = new NumberBox;
    side.to = new NumberBox;
    side.from->setAccessibleName(text.from);
    side.to->setAccessibleName(text.to);
    connect(side.variable, &QComboBox::currentIndexChanged, this,
            [this, which] { variableChosen(which); });
    for (NumberBox* box : {side.from, side.to}) {
        box->setKeyboardTracking(false);
        connect(box, &QDoubleSpinBox::valueChanged, this, [this, which] { rangeTyped(which); });
    }
    auto* const widget = new QWidget;
    auto* const grid = new QGridLayout(widget);
    grid->setContentsMargins(0, 0, 0, 0);
    auto* const label = new QLabel(text.title);
    label->setBuddy(side.variable);
    grid->addWidget(label, 0, 0, 1, 3);
    grid->addWidget(side.variable, 1, 0, 1, 3);
    grid->addWidget(side.from, 2, 0);
    grid->addWidget(new QLabel(tr("to")), 2, 1, Qt::AlignCenter);
    grid->addWidget(side.to, 2, 2);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(2, 1);
    return widget;
}

void MapControls::offer(const Setup& setup)
{
    const bool wasDrilled = m_mounts.drilled();
    m_mounts = setup.mounts;
    for (const Variable variable : kVariables)
        m_ranges[placeOf(variable)] = usualRange(setup, variable);
    m_holes->setVisible(m_mounts.drilled());
    if (wasDrilled != m_mounts.drilled())
        fillVariables();
    for (Side& side : m_sides)
        showRange(side);
}

// Stretch and elevation are left out where the holes, or keeping it level, decide them. What a side
// set it still sets, where that is free; else what is usual, but never what the other side sets.
void MapControls::fillVariables()
{
    m_isFilling = true;
    for (const Side& side : m_sides) {
        const QVariant before = side.variable->currentData();
        side.variable->clear();
        for (const Variable variable : kOffered)
            if (isOffered(variable))
                side.variable->addItem(displayText(fieldOf(variable).label),
                                       static_cast<int>(variable));
        side.variable->setCurrentIndex(before.isValid() ? side.variable->findData(before) : -1);
    }
    for (std::size_t which = 0; which < m_sides.size(); ++which) {
        QComboBox* const box = m_sides[which].variable;
        const QVariant others = m_sides[1 - which].variable->currentData();
        for (const Variable usual : kUsual[which])
            if (box->currentIndex() < 0 && others != static_cast<int>(usual))
                box->setCurrentIndex(box->findData(static_cast<int>(usual)));
    }
    m_holes->setVisible(m_mounts.drilled());
    m_place->setVisible(!m_mounts.drilled());
    m_level->setVisible(!m_mounts.drilled());
    m_isFilling = false;
}

bool MapControls::keepsLevel() const
{
    return m_level->isChecked() && !m_mounts.drilled();
}

bool MapControls::isOffered(Variable variable) const
{
    return canSet(m_mounts, variable) && !(keepsLevel() && variable == Variable::Elevation);
}

Variable MapControls::variableOf(const Side& side) const
{
    return static_cast<Variable>(side.variable->currentData().toInt());
}

// The other side gives way where both would set the same.
void MapControls::variableChosen(std::size_t which)
{
    if (m_isFilling)
        return;
    Side& other = m_sides[1 - which];
    if (variableOf(other) == variableOf(m_sides[which])) {
        m_isFilling = true;
        other.variable->setCurrentIndex((other.variable->currentIndex() + 1) %
                                        other.variable->count());
        m_isFilling = false;
    }
    for (Side& side : m_sides)
        showRange(side);
    emit axesChanged();
}

void MapControls::showRange(Side& side)
{
    m_isFilling = true;
    const Variable variable = variableOf(side);
    const VariableField field = fieldOf(variable);
    const VariableRange& range = m_ranges[placeOf(variable)];
    for (NumberBox* box : {side.from, side.to}) {
        box->setRange(shownValue(variable, field.min), shownValue(variable, field.max));
        box->setSingleStep(variable == Variable::Stretch ? 1.0 : field.step);
        box->setUnit(variable == Variable::Stretch ? QStringLiteral("%")
                                                   : QString::fromUtf8(field.unit));
    }
    side.from->show(shownValue(variable, range.from));
    side.to->show(shownValue(variable, range.to));
    m_isFilling = false;
}

void MapControls::rangeTyped(std::size_t which)
{
    if (m_isFilling)
        return;
    const Side& side = m_sides[which];
    const Variable variable = variableOf(side);
    m_ranges[placeOf(variable)] = {variable, valueShown(variable, side.from->value()),
                                   valueShown(variable, side.to->value())};
    emit axesChanged();
}

MapAxis MapControls::axisOf(const Side& side) const
{
    return roundAxis(m_ranges[placeOf(variableOf(side))], kAbout);
}

MapAxis MapControls::across() const
{
    return axisOf(m_sides[0]);
}

MapAxis MapControls::up() const
{
    return axisOf(m_sides[1]);
}

MapShows MapControls::shows() const
{
    return static_cast<MapShows>(std::max(0, m_shows->currentIndex()));
}

}  // namespace stillbay::ui
