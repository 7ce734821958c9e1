// SPDX-License-Identifier: MIT
#include "ui/find/candidates_table.h"

#include "ui/find/candidates_model.h"

#include <QAction>
#include <QApplication>
#include <QHeaderView>
#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kPadding = 6;
constexpr int kWidestCell = 24;  // characters; the tool tip has the whole
constexpr int kLeastTune = 20;   // characters of the column that takes what is left

bool isOfNarrow(int column)
{
    return column == CandidatesModel::Mark || column == CandidatesModel::FullPack ||
           column == CandidatesModel::Robust;
}

/// Writes a cell's second line below its first one, both cut where there is no room.
class TwoLines final : public QStyledItemDelegate {
public:
    explicit TwoLines(const CandidatesTable& table, QObject* parent)
        : QStyledItemDelegate(parent), m_table(table)
    {
    }

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        QStyleOptionViewItem filled = option;
        initStyleOption(&filled, index);
        const QFontMetrics& metrics = filled.fontMetrics;
        int width = metrics.horizontalAdvance(filled.text);
        if (m_table.isNarrow())
            width = std::max(width, metrics.horizontalAdvance(second(index)));
        return {width + 2 * kPadding, metrics.height() + 8};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        if (!m_table.isNarrow())
            return QStyledItemDelegate::paint(painter, option, index);
        QStyleOptionViewItem filled = option;
        initStyleOption(&filled, index);
        const QString first = filled.text;
        filled.text.clear();
        const QStyle* const style = filled.widget ? filled.widget->style() : QApplication::style();
        style->drawControl(QStyle::CE_ItemViewItem, &filled, painter, filled.widget);
        const bool isChosen = filled.state & QStyle::State_Selected;
        painter->save();
        painter->setFont(filled.font);
        painter->setPen(
            filled.palette.color(isChosen ? QPalette::HighlightedText : QPalette::Text));
        const QRect area = filled.rect.adjusted(kPadding, 3, -kPadding, -3);
        const int height = area.height() / 2;
        const auto write = [&](const QString& text, int top) {
            painter->drawText(
                QRect(area.left(), area.top() + top, area.width(), height),
                static_cast<int>((filled.displayAlignment & Qt::AlignHorizontal_Mask) |
                                 Qt::AlignVCenter),
                filled.fontMetrics.elidedText(text, Qt::ElideRight, area.width()));
        };
        write(first, 0);
        write(second(index), height);
        painter->restore();
    }

private:
    static QString second(const QModelIndex& index)
    {
        return index.data(CandidatesModel::kSecondLine).toString();
    }

    const CandidatesTable& m_table;
};

}  // namespace

CandidatesTable::CandidatesTable(CandidatesModel& model, QWidget* parent) : QTableView(parent)
{
    setAccessibleName(tr("Tunes found"));
    setModel(&model);
    setItemDelegate(new TwoLines(*this, this));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->hide();
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    horizontalHeader()->setMinimumSectionSize(20);
    connect(&model, &QAbstractItemModel::modelReset, this, &CandidatesTable::fit);
    connect(this, &QTableView::doubleClicked, this, &CandidatesTable::taken);
    connect(selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &CandidatesTable::chosenChanged);
    auto* const onEnter = new QAction(this);
    onEnter->setShortcuts({Qt::Key_Return, Qt::Key_Enter});
    onEnter->setShortcutContext(Qt::WidgetShortcut);
    connect(onEnter, &QAction::triggered, this, &CandidatesTable::taken);
    addAction(onEnter);
    fit();
}

int CandidatesTable::chosenRow() const
{
    const QModelIndexList rows = selectionModel()->selectedRows();
    return rows.isEmpty() ? -1 : rows.front().row();
}

void CandidatesTable::resizeEvent(QResizeEvent* event)
{
    QTableView::resizeEvent(event);
    fit();
}

// For the widest of its cells and the longest word of its heading.
int CandidatesTable::widthOf(int column) const
{
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    int width = 0;
    for (int row = 0; row < model()->rowCount(); ++row)
        width =
            std::max(width, itemDelegate()->sizeHint(option, model()->index(row, column)).width());
    width = std::min(width, kWidestCell * fontMetrics().averageCharWidth());
    for (const QString& word : model()->headerData(column, Qt::Horizontal).toString().split(u' '))
        width = std::max(width, fontMetrics().horizontalAdvance(word) + 2 * kPadding);
    return width;
}

void CandidatesTable::fit()
{
    const int room = viewport()->width();
    const int least = kLeastTune * fontMetrics().averageCharWidth();
    std::vector<int> widths(CandidatesModel::ColumnCount);
    m_isNarrow = false;
    int all = 0;
    for (int column = 0; column < CandidatesModel::ColumnCount; ++column)
        all += widths[static_cast<std::size_t>(column)] = widthOf(column);
    m_isNarrow = all > room;
    int left = room, tallest = 1;
    for (int column = 1; column < CandidatesModel::ColumnCount; ++column) {
        setColumnHidden(column, m_isNarrow && !isOfNarrow(column));
        if (isColumnHidden(column))
            continue;
        const int width = m_isNarrow ? widthOf(column) : widths[static_cast<std::size_t>(column)];
        setColumnWidth(column, width);
        left -= width;
        const QString heading = model()->headerData(column, Qt::Horizontal).toString();
        tallest = std::max(tallest, fontMetrics()
                                        .boundingRect(QRect(0, 0, width - 2 * kPadding, 1000),
                                                      Qt::TextWordWrap, heading)
                                        .height());
    }
    setColumnWidth(CandidatesModel::Mark, std::max(left, least));
    horizontalHeader()->setFixedHeight(tallest + 8);
    const int line = fontMetrics().height();
    const int row = m_isNarrow ? 2 * line + 8 : line + 8;
    verticalHeader()->setDefaultSectionSize(row);
    setFixedHeight(tallest + 8 + std::max(1, model()->rowCount()) * row + 2 * frameWidth());
}

}  // namespace stillbay::ui
