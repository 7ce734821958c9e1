// SPDX-License-Identifier: MIT
#include "ui/find/find_choices.h"

#include "ui/find/drawer_panel.h"
#include "ui/find/find_words.h"
#include "ui/find/knob_ranges.h"

#include <QGroupBox>
#include <QHBoxLayout>
#include <QRadioButton>
#include <QSettings>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

const QString kFromDrawer = QStringLiteral("find/from-drawer");

}  // namespace

FindChoices::FindChoices(QWidget* parent)
    : QWidget(parent),
      m_knobs(new KnobRanges),
      m_usePresent(new QRadioButton),
      m_useDrawer(new QRadioButton(tr("The best of those ticked in the &drawer"))),
      m_drawer(new DrawerPanel)
{
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(makeChange());
    row->addWidget(makeTube(), 1);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

QWidget* FindChoices::makeChange()
{
    auto* const change = new QGroupBox(tr("What may change"));
    (new QVBoxLayout(change))->addWidget(m_knobs);
    connect(m_knobs, &KnobRanges::refused, this, &FindChoices::refused);
    connect(m_knobs, &KnobRanges::changed, this, &FindChoices::changed);
    connect(m_knobs, &KnobRanges::usualWanted, this, [this] { m_knobs->setUsual(m_present); });
    return change;
}

QWidget* FindChoices::makeTube()
{
    m_usePresent->setToolTip(tr("Keeps the tube that the craft has now."));
    m_useDrawer->setToolTip(
        tr("Tries every ticked tube. The drawer is yours, and the same for every craft."));
    const bool fromDrawer = QSettings().value(kFromDrawer).toBool();
    (fromDrawer ? m_useDrawer : m_usePresent)->setChecked(true);
    connect(m_useDrawer, &QRadioButton::toggled, this, [this](bool on) {
        QSettings().setValue(kFromDrawer, on);
        emit changed();
    });
    auto* const tube = new QGroupBox(tr("Which tube"));
    auto* const column = new QVBoxLayout(tube);
    column->addWidget(m_usePresent);
    column->addWidget(m_useDrawer);
    column->addWidget(m_drawer);
    return tube;
}

void FindChoices::openCraft(const Setup& setup)
{
    m_knobs->setUsual(designOf(setup));
    follow(setup);
    readDrawer();
}

void FindChoices::follow(const Setup& setup)
{
    m_present = designOf(setup);
    m_knobs->follow(m_present);
    m_usePresent->setText(tr("The pr&esent tube: %1").arg(tubeText(stockOf(setup.tube))));
}

void FindChoices::readDrawer()
{
    m_drawer->setPresent(stockOf(m_present.tube));
}

std::optional<SearchSpace> FindChoices::space()
{
    if (!m_knobs->takeTyping())
        return {};
    return SearchSpace{
        .knobs = m_knobs->chosen(),
        .stock = m_useDrawer->isChecked() ? m_drawer->ticked() : std::vector<StockTube>(),
        .kept = {}};
}

QString FindChoices::faultOf(const SearchSpace& space) const
{
    if (const QString fault = m_knobs->fault(); !fault.isEmpty())
        return fault;
    if (m_useDrawer->isChecked() && space.stock.empty())
        return tr("no tube in the drawer is ticked");
    if (space.stock.empty() && space.knobs.empty())
        return tr("nothing may change; tick a length, or let the tube be chosen");
    return {};
}

}  // namespace stillbay::ui
