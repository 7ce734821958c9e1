// SPDX-License-Identifier: MIT
#include "ui/find/stock_panel.h"

#include "ui/find/stock_model.h"
#include "ui/find/tube_delegate.h"
#include "ui/find/tube_fields.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QAction>
#include <QGridLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kRowsInSight = 4;

}  // namespace

StockPanel::StockPanel(QWidget* parent)
    : QWidget(parent),
      m_model(new StockModel(this)),
      m_table(new QTableView(this)),
      m_boxes{},
      m_remove(new QPushButton(tr("Remove"), this)),
      m_problem(new ProblemLabel(this))
{
    makeTable();
    m_remove->setAutoDefault(true);
    m_remove->setToolTip(tr("Removes the chosen tube from the stock (Delete)."));
    connect(m_remove, &QPushButton::clicked, this, &StockPanel::remove);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_table);
    layout->addWidget(makeEntry());
    layout->addWidget(m_problem);
    connect(m_model, &StockModel::edited, this, &StockPanel::changed);
    connect(m_model, &StockModel::refused, m_problem, &ProblemLabel::refuse);
    connect(m_model, &StockModel::notKept, m_problem, &ProblemLabel::format);
    showState();
}

void StockPanel::makeTable()
{
    m_table->setAccessibleName(tr("Tube stock"));
    m_table->setModel(m_model);
    auto* const delegate = new TubeDelegate(m_table);
    connect(delegate, &TubeDelegate::refused, m_problem, &ProblemLabel::refuse);
    m_table->setItemDelegate(delegate);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->verticalHeader()->hide();
    const int row = fontMetrics().height() + 8;
    m_table->verticalHeader()->setDefaultSectionSize(row);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_table->setFixedHeight(m_table->horizontalHeader()->sizeHint().height() + kRowsInSight * row +
                            2 * m_table->frameWidth());
    connect(m_table->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &StockPanel::showState);
    auto* const out = new QAction(m_table);
    out->setShortcut(QKeySequence::Delete);
    out->setShortcutContext(Qt::WidgetShortcut);
    connect(out, &QAction::triggered, this, &StockPanel::remove);
    m_table->addAction(out);
}

QWidget* StockPanel::makeEntry()
{
    const std::array names{tr("Outer diameter of a new tube"), tr("Bore of a new tube"),
                           tr("Shore A hardness of a new tube")};
    auto* const row = new QWidget(this);
    auto* const layout = new QGridLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    for (std::size_t k = 0; k < m_boxes.size(); ++k) {
        m_boxes[k] = makeTubeBox(k, row);
        m_boxes[k]->setAccessibleName(names[k]);
        connect(m_boxes[k], &NumberBox::refused, m_problem, &ProblemLabel::refuse);
        layout->addWidget(m_boxes[k], 0, static_cast<int>(k));
    }
    auto* const add = new QPushButton(tr("Add"), row);
    add->setToolTip(tr("Adds a tube of these measures to the stock."));
    connect(add, &QPushButton::clicked, this, [this] {
        StockTube tube;
        for (std::size_t k = 0; k < m_boxes.size(); ++k) {
            m_boxes[k]->interpretText();
            tube.*kStockMembers[k] = m_boxes[k]->value();
        }
        put(tube);
    });
    auto* const present = new QPushButton(tr("Add the present one"), row);
    present->setToolTip(tr("Adds the tube that the craft has now to the stock."));
    connect(present, &QPushButton::clicked, this, [this] { put(m_present); });
    for (QPushButton* button : {add, present})
        button->setAutoDefault(true);
    layout->addWidget(add, 1, 0);
    layout->addWidget(present, 1, 1);
    layout->addWidget(m_remove, 1, 2);
    return row;
}

void StockPanel::setPresent(const StockTube& present)
{
    m_present = present;
    TubeStock stock = readTubeStock(present);
    if (stock.tubes != m_model->tubes())
        m_model->setTubes(std::move(stock.tubes));
    if (!stock.damagedKey.isEmpty())
        m_problem->format(
            tr("A part of the tube stock could not be read. It is still in the settings, under %1.")
                .arg(stock.damagedKey));
    if (m_isFirst)
        for (std::size_t k = 0; k < m_boxes.size(); ++k)
            m_boxes[k]->show(present.*kStockMembers[k]);
    m_isFirst = false;
    showState();
}

std::vector<StockTube> StockPanel::ticked() const
{
    return m_model->ticked();
}

void StockPanel::put(const StockTube& tube)
{
    const int row = m_model->add(tube);
    if (row < 0)
        return;
    m_table->selectRow(row);
    m_table->setFocus();
}

void StockPanel::remove()
{
    const QModelIndexList rows = m_table->selectionModel()->selectedRows();
    if (rows.isEmpty())
        return;
    const int row = rows.front().row();
    const bool hadFocus = m_remove->hasFocus();
    m_problem->format({});
    m_model->remove(row);
    if (m_model->rowCount() > 0)
        m_table->selectRow(std::min(row, m_model->rowCount() - 1));
    showState();
    if (hadFocus && !m_remove->isEnabled())
        m_boxes.front()->setFocus(Qt::TabFocusReason);  // to put another in
}

void StockPanel::showState()
{
    m_remove->setEnabled(m_table->selectionModel()->hasSelection());
}

}  // namespace stillbay::ui
