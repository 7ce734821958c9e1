// SPDX-License-Identifier: MIT
#include "ui/find/find_choices.h"

#include "ui/find/stock_panel.h"
#include "ui/find/variable_ranges.h"
#include "ui/widgets/quantity.h"

#include <QGroupBox>
#include <QHBoxLayout>
#include <QRadioButton>
#include <QSettings>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

const QString kFromStock = QStringLiteral("find/from-drawer");

}  // namespace

FindChoices::FindChoices(QWidget* parent)
    : QWidget(parent),
      m_variables(new VariableRanges),
      m_usePresent(new QRadioButton),
      m_useStock(new QRadioButton(tr("The best of those ticked in the tube st&ock"))),
      m_stock(new StockPanel)
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
    (new QVBoxLayout(change))->addWidget(m_variables);
    connect(m_variables, &VariableRanges::refused, this, &FindChoices::refused);
    connect(m_variables, &VariableRanges::changed, this, &FindChoices::changed);
    connect(m_variables, &VariableRanges::usualWanted, this,
            [this] { m_variables->setUsual(m_craft); });
    return change;
}

QWidget* FindChoices::makeTube()
{
    m_usePresent->setToolTip(tr("Keeps the tube that the craft has now."));
    m_useStock->setToolTip(
        tr("Tries every ticked tube. The tube stock is yours, and the same for every craft."));
    const bool fromStock = QSettings().value(kFromStock).toBool();
    (fromStock ? m_useStock : m_usePresent)->setChecked(true);
    connect(m_useStock, &QRadioButton::toggled, this, [this](bool on) {
        QSettings().setValue(kFromStock, on);
        emit changed();
    });
    auto* const tube = new QGroupBox(tr("Which tube"));
    auto* const column = new QVBoxLayout(tube);
    column->addWidget(m_usePresent);
    column->addWidget(m_useStock);
    column->addWidget(m_stock);
    return tube;
}

void FindChoices::openCraft(const Setup& setup)
{
    m_variables->setUsual(setup);
    follow(setup);
    readTubeStock();
}

void FindChoices::follow(const Setup& setup)
{
    m_craft = setup;
    m_variables->follow(setup.mounts);
    m_usePresent->setText(tr("The pr&esent tube: %1").arg(tubeText(stockOf(setup.tube))));
}

void FindChoices::readTubeStock()
{
    m_stock->setPresent(stockOf(m_craft.tube));
}

std::optional<SearchSpace> FindChoices::space()
{
    if (!m_variables->takeTyping())
        return {};
    return SearchSpace{
        .variables = m_variables->chosen(),
        .stock = m_useStock->isChecked() ? m_stock->ticked() : std::vector<StockTube>(),
        .kept = {},
        .level = m_variables->keepsLevel()};
}

QString FindChoices::faultOf(const SearchSpace& space) const
{
    if (const QString fault = m_variables->fault(); !fault.isEmpty())
        return fault;
    if (m_useStock->isChecked() && space.stock.empty())
        return tr("no tube in the stock is ticked");
    if (space.stock.empty() && space.variables.empty())
        return tr("nothing may change; tick a length, or let the tube be chosen");
    return {};
}

}  // namespace stillbay::ui
