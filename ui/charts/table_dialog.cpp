// SPDX-License-Identifier: MIT
#include "ui/charts/table_dialog.h"

#include <QAbstractTableModel>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QGuiApplication>
#include <QHeaderView>
#include <QLocale>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kDigits = 5;
constexpr QSize kFirstSize(640, 480);

class TableModel final : public QAbstractTableModel {
public:
    TableModel(const ChartTable& table, QObject* parent)
        : QAbstractTableModel(parent), m_table(table)
    {
    }

    int rowCount(const QModelIndex& parent = {}) const override
    {
        return parent.isValid() ? 0 : static_cast<int>(m_table.rows());
    }

    int columnCount(const QModelIndex& parent = {}) const override
    {
        return parent.isValid() ? 0 : static_cast<int>(m_table.columns.size());
    }

    QVariant data(const QModelIndex& index, int role) const override
    {
        if (role == Qt::TextAlignmentRole)
            return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
        if (role != Qt::DisplayRole)
            return {};
        const ChartColumn& column = m_table.columns[static_cast<std::size_t>(index.column())];
        const double value = column.perValue * column.values[static_cast<std::size_t>(index.row())];
        return std::isfinite(value) ? QLocale().toString(value, 'g', kDigits) : tr("none");
    }

    QVariant headerData(int section, Qt::Orientation orientation, int role) const override
    {
        if (orientation == Qt::Horizontal && role == Qt::DisplayRole)
            return m_table.columns[static_cast<std::size_t>(section)].heading;
        return QAbstractTableModel::headerData(section, orientation, role);
    }

private:
    ChartTable m_table;
};

}  // namespace

TableDialog::TableDialog(const ChartTable& table, QWidget* parent) : QDialog(parent)
{
    setWindowTitle(table.title);
    auto* const view = new QTableView;
    view->setAccessibleName(tr("Numbers of %1").arg(table.title));
    view->setModel(new TableModel(table, view));
    view->setTabKeyNavigation(false);  // Tab leaves the table, arrows walk in it
    view->verticalHeader()->hide();
    view->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    view->horizontalHeader()->setStretchLastSection(true);
    if (table.rows() > 0)
        view->setCurrentIndex(view->model()->index(0, 0));

    auto* const buttons = new QDialogButtonBox(QDialogButtonBox::Close);
    QPushButton* const copy = buttons->addButton(tr("&Copy all"), QDialogButtonBox::ActionRole);
    copy->setToolTip(tr("Copies the whole table, to be pasted into a spreadsheet."));
    connect(copy, &QPushButton::clicked, this,
            [table] { QGuiApplication::clipboard()->setText(toTabbedText(table)); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* const layout = new QVBoxLayout(this);
    layout->addWidget(view, 1);
    layout->addWidget(buttons);
    resize(kFirstSize);
}

}  // namespace stillbay::ui
