// SPDX-License-Identifier: MIT
#include "ui/craft/craft_form.h"

#include "core/base/units.h"
#include "core/setup/mount_layout.h"
#include "core/setup/sources.h"
#include "ui/craft/bay_mass_row.h"
#include "ui/craft/choices.h"
#include "ui/craft/craft_summaries.h"
#include "ui/craft/field_cards.h"
#include "ui/craft/helper_buttons.h"
#include "ui/craft/preset_buttons.h"
#include "ui/craft/quick_layouts.h"
#include "ui/craft/row_lists.h"
#include "ui/craft/throttle_curve_row.h"
#include "ui/widgets/bind_text.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/field_row.h"
#include "ui/widgets/section.h"
#include "ui/widgets/tab_order.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillbay::ui {

CraftForm::CraftForm(Document& document, QWidget* parent)
    : QScrollArea(parent), m_document(document)
{
    auto* const page = new QWidget;
    m_layout = new QVBoxLayout(page);
    m_layout->setContentsMargins(2, 4, 2, 4);
    m_layout->setSpacing(2);
    addCraft();
    addAirframe();
    addDrive();
    addBay();
    addCamera();
    addTube();
    addMounts();
    addFlight();
    m_layout->addStretch();
    m_sections[QStringLiteral("tube")]->setOpen(true);  // what a shop visit changes first
    for (auto section = m_sections.cbegin(); section != m_sections.cend(); ++section)
        section.value()->rememberAs(section.key());

    setWidget(page);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    setAccessibleName(tr("Craft"));
    // Behind the fields and lists, which hear of a change before.
    connect(&m_document, &Document::setupChanged, this, [this] {
        summarise();
        keepReadingOrder();
    });
    connect(qApp, &QApplication::focusChanged, this,
            [this](QWidget*, QWidget* now) { followFocus(now); });
    summarise();
    keepReadingOrder();
}

// Cards that were made anew stand at the end of the window's chain of tab stops.
// Fields and rows come and go with the numbers that are given, and boxes with the entries of a
// list; to walk all of them takes as long as to draw a chart.
void CraftForm::keepReadingOrder()
{
    std::vector<std::string> given = numbersOf(m_document.setup());
    if (given == m_given)
        return;
    m_given = std::move(given);
    QList<QPointer<QWidget>> stops = tabStopsIn(*widget());
    if (stops == m_tabStops)
        return;
    orderTabs(*this, stops);
    m_tabStops = std::move(stops);
}

void CraftForm::followFocus(const QWidget* focused)
{
    const QString path = focused && isAncestorOf(focused) ? fieldPathAt(focused, this) : QString();
    if (path == m_focusedField)
        return;
    m_focusedField = path;
    emit fieldFocused(path);
}

Section* CraftForm::addSection(const QString& title)
{
    auto* const section = new Section(title);
    m_layout->addWidget(section);
    return section;
}

// One that can be filled from a preset.
Section* CraftForm::addSection(const QString& title, PresetKind kind)
{
    Section* const section = addSection(title);
    section->add(new PresetButtons(m_document, kind));
    return section;
}

template <class Owner>
void CraftForm::addFields(Section& section, const QString& path, const QString& spoken,
                          const Owner* (*ownerIn)(const Setup&))
{
    for (FieldRow* const row : fieldRows(m_document, Place<Owner>{path, spoken, ownerIn})) {
        section.add(row);
        if (row->spec().optional)
            m_estimated[row->spec().path] = row;
        connect(row, &FieldRow::remade, this, [this] { m_given.clear(); });
    }
    m_sections[path] = &section;
}

void CraftForm::addCraft()
{
    Section* const section = addSection(tr("Craft"));
    const auto labelled = [section](const QString& title, QWidget* editor) {
        auto* const label = new QLabel(title);
        label->setBuddy(editor);
        section->add(label);
        section->add(editor);
    };
    auto* const name = new QLineEdit;
    name->setToolTip(tr("What you call this craft."));
    labelled(tr("Name"), new TextRow(m_document,
                                     {QStringLiteral("name"), tr("Craft: name"),
                                      [](const Setup& setup) {
                                          return &setup.name;
                                      }},
                                     name));
    auto* const notes = new QPlainTextEdit;
    notes->setToolTip(tr("Whatever you want to remember of this craft; kept in its file."));
    notes->setFixedHeight(5 * notes->fontMetrics().lineSpacing() + 12);
    labelled(tr("Notes"), new TextRow(m_document,
                                      {QStringLiteral("notes"), tr("Craft: notes"),
                                       [](const Setup& setup) {
                                           return &setup.notes;
                                       }},
                                      notes));
    m_sections[QStringLiteral("name")] = section;
}

void CraftForm::addAirframe()
{
    Section* const hub = addSection(tr("Airframe"));
    hub->add(airframePartList(m_document));
    m_sections[QStringLiteral("airframe.parts")] = hub;
    Section* const arms = addSection(tr("Arms"));
    arms->add(new LayoutMenu(m_document, armLayouts()));
    arms->add(new PresetButtons(m_document, PresetKind::Arm));
    addFields<ArmSection>(*arms, QStringLiteral("airframe.arm"), tr("Arms"),
                          [](const Setup& setup) { return &setup.airframe.arm; });
    arms->add(armList(m_document));
    m_sections[QStringLiteral("airframe.arms")] = arms;
}

void CraftForm::addDrive()
{
    addFields<Motor>(*addSection(tr("Motors"), PresetKind::Motor), QStringLiteral("drive.motor"),
                     tr("Motors"), [](const Setup& setup) { return &setup.drive.motor; });
    Section* const propellers = addSection(tr("Propellers"), PresetKind::Propeller);
    addFields<Propeller>(*propellers, QStringLiteral("drive.propeller"), tr("Propellers"),
                         [](const Setup& setup) { return &setup.drive.propeller; });
    propellers->add(new ThrustButton(m_document), Qt::AlignLeft);
    addFields<Battery>(*addSection(tr("Battery"), PresetKind::Pack),
                       QStringLiteral("drive.battery"), tr("Battery"),
                       [](const Setup& setup) { return &setup.drive.battery; });
    Section* const vibrations = addSection(tr("Excitation"));
    addFields<Drive>(*vibrations, QStringLiteral("drive"), tr("Drive"),
                     [](const Setup& setup) { return &setup.drive; });
    m_balance = new BalanceButton(m_document);
    vibrations->add(m_balance, Qt::AlignLeft);
    vibrations->add(throttleCurveRow(m_document));
}

void CraftForm::addBay()
{
    Section* const section = addSection(tr("Bay"));
    addFields<Bay>(*section, QStringLiteral("bay"), tr("Bay"),
                   [](const Setup& setup) { return &setup.bay; });
    section->add(bayMassRow(m_document));
    section->add(bayPartList(m_document));
}

void CraftForm::addCamera()
{
    Section* const section = addSection(tr("Camera"), PresetKind::Camera);
    addFields<Camera>(*section, QStringLiteral("camera"), tr("Camera"),
                      [](const Setup& setup) { return &setup.camera; });
    section->add(lensChoice(m_document));
    section->add(new ExposureButton(m_document), Qt::AlignLeft);
}

void CraftForm::addTube()
{
    addFields<TubeKind>(*addSection(tr("Tube"), PresetKind::Tube), QStringLiteral("tube"),
                        tr("Tube"), [](const Setup& setup) { return &setup.tube; });
}

void CraftForm::addMounts()
{
    Section* const section = addSection(tr("Mounts"));
    addFields<Mounts>(*section, QStringLiteral("mounts"), tr("Mounts"),
                      [](const Setup& setup) { return &setup.mounts; });
    section->add(endsChoice(m_document));
    section->add(anchorChoice(m_document));
    section->add(pointList(m_document));
}

void CraftForm::addFlight()
{
    addFields<Flight>(*addSection(tr("Flight")), QStringLiteral("flight"), tr("Flight"),
                      [](const Setup& setup) { return &setup.flight; });
    addFields<Limits>(*addSection(tr("Limits")), QStringLiteral("limits"), tr("Limits"),
                      [](const Setup& setup) { return &setup.limits; });
}

void CraftForm::setAssessment(const Assessment& assessment)
{
    const auto estimate = [this](const char* path, double value) {
        if (FieldRow* const found = m_estimated.value(QLatin1String(path)))
            found->setEstimate(std::round(1e3 * value) / 1e3);
    };
    estimate("tube.youngs_modulus_mpa", assessment.tube.youngs_modulus / unit::mpa);
    estimate("drive.propeller.thrust_coefficient", assessment.propeller.thrust_coefficient);
    estimate("drive.propeller.power_coefficient", assessment.propeller.power_coefficient);
    m_balance->setAssessment(assessment);
}

void CraftForm::reveal(const QString& path)
{
    QString best;
    for (auto it = m_sections.cbegin(); it != m_sections.cend(); ++it)
        if (path.startsWith(it.key()) && it.key().size() > best.size())
            best = it.key();
    Section* const section = m_sections.value(best);
    if (!section)
        return;
    section->setOpen(true);
    ensureWidgetVisible(section);
}

// Where the craft says nothing of sources, every number is the builder's own.
QHash<Section*, OwnNumbers> CraftForm::ownNumbersOf(const Setup& setup) const
{
    QHash<Section*, OwnNumbers> own;
    if (setup.sources.empty())
        return own;
    std::vector<std::string> places;
    for (auto section = m_sections.cbegin(); section != m_sections.cend(); ++section)
        places.push_back(section.key().toStdString());
    const std::vector<OwnNumbers> counts = ownNumbers(setup, places);
    std::size_t k = 0;
    for (Section* section : m_sections) {
        own[section].given += counts[k].given;
        own[section].own += counts[k].own;
        ++k;
    }
    return own;
}

void CraftForm::summarise()
{
    const Setup& setup = m_document.setup();
    const auto own = ownNumbersOf(setup);
    for (const auto& [path, text] : craftSummaries(setup)) {
        Section* const section = m_sections[path];
        const OwnNumbers& numbers = own[section];
        section->setSummary(
            numbers.own == numbers.given
                ? text
                : tr("%1 of %2 yours, %3").arg(numbers.own).arg(numbers.given).arg(text));
    }
    if (FieldRow* const row = m_estimated.value(QStringLiteral("mounts.stretch"))) {
        const double stretch = std::round(1e3 * drawnStretch(setup.mounts)) / 1e3;
        row->setEstimate(setup.mounts.drilled() ? std::optional(stretch) : std::nullopt);
    }
}

}  // namespace stillbay::ui
