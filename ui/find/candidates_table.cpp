// SPDX-License-Identifier: MIT
#include "ui/find/candidates_table.h"

#include "ui/find/candidates_model.h"

#include <QAction>
#include <QHeaderView>

namespace stillbay::ui {

CandidatesTable::CandidatesTable(CandidatesModel& model, QWidget* parent) : QTableView(parent)
{
    setAccessibleName(tr("Tunes found"));
    setModel(&model);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    horizontalHeader()->setStretchLastSection(true);
    connect(this, &QTableView::doubleClicked, this, &CandidatesTable::taken);
    connect(selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &CandidatesTable::chosenChanged);
    auto* const onEnter = new QAction(this);
    onEnter->setShortcuts({Qt::Key_Return, Qt::Key_Enter});
    onEnter->setShortcutContext(Qt::WidgetShortcut);
    connect(onEnter, &QAction::triggered, this, &CandidatesTable::taken);
    addAction(onEnter);
}

int CandidatesTable::chosenRow() const
{
    const QModelIndexList rows = selectionModel()->selectedRows();
    return rows.isEmpty() ? -1 : rows.front().row();
}

}  // namespace stillbay::ui
