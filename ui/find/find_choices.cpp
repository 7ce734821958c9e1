// SPDX-License-Identifier: MIT
#include "ui/find/find_choices.h"

#include "ui/find/stock_panel.h"
#include "ui/find/variable_ranges.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/quantity.h"
#include "ui/widgets/section.h"

#include <QRadioButton>
#include <QSettings>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

const QString kFromStock = QStringLiteral("find/from-drawer");

}  // namespace

FindChoices::FindChoices(QWidget* parent)
    : QWidget(parent),
      m_change(new Section(tr("What may change"))),
      m_tube(new Section(tr("Which tube"))),
      m_variables(new VariableRanges),
      m_usePresent(new QRadioButton),
      m_useStock(new QRadioButton(tr("The best of those ticked in the tube stock"))),
      m_stock(new StockPanel)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(makeChange());
    column->addWidget(makeTube());
}

QWidget* FindChoices::makeChange()
{
    m_change->add(m_variables);
    m_change->rememberAs(QStringLiteral("findChange"));
    m_change->setOpen(true);
    connect(m_change, &Section::toggled, this, &FindChoices::summarize);
    connect(m_variables, &VariableRanges::refused, this, &FindChoices::refused);
    connect(m_variables, &VariableRanges::changed, this, &FindChoices::changed);
    connect(m_variables, &VariableRanges::changed, this, &FindChoices::summarize);
    connect(m_variables, &VariableRanges::usualWanted, this,
            [this] { m_variables->setUsual(m_craft); });
    return m_change;
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
        summarize();
        emit changed();
    });
    m_tube->add(m_usePresent);
    m_tube->add(m_useStock);
    m_tube->add(m_stock);
    m_tube->rememberAs(QStringLiteral("findTube"));
    m_tube->setOpen(fromStock);
    connect(m_tube, &Section::toggled, this, &FindChoices::summarize);
    return m_tube;
}

// Beside a heading, what is folded away below it.
void FindChoices::summarize()
{
    QStringList names;
    for (const VariableRange& range : m_variables->chosen())
        names << displayText(rowOf(range.variable).name);
    m_change->setSummary(m_change->isOpen() ? QString() : names.join(tr(", ")));
    m_tube->setSummary(m_tube->isOpen()          ? QString()
                       : m_useStock->isChecked() ? tr("from the tube stock")
                                                 : tubeText(stockOf(m_craft.tube)));
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
    m_usePresent->setText(tr("The present tube: %1").arg(tubeText(stockOf(setup.tube))));
    summarize();
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
