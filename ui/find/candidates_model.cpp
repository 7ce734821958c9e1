// SPDX-License-Identifier: MIT
#include "ui/find/candidates_model.h"

#include "ui/find/find_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/quantity.h"

#include <QApplication>
#include <QPalette>

#include <algorithm>

namespace stillbay::ui {

void CandidatesModel::setAnswer(const Recommendation& answer)
{
    beginResetModel();
    m_rows = rowsOf(answer);
    m_mostRobust = mostRobustOf(m_rows);
    m_isSearch = !answer.candidates.empty();
    m_best = answer.best.design;
    m_before = answer.present.design;
    endResetModel();
}

void CandidatesModel::clear()
{
    beginResetModel();
    m_rows.clear();
    endResetModel();
}

void CandidatesModel::setPresent(const Design& present)
{
    if (present == m_present)
        return;
    m_present = present;
    repaint();
}

void CandidatesModel::setStale(bool stale)
{
    if (stale == m_isStale)
        return;
    m_isStale = stale;
    repaint();
}

void CandidatesModel::repaint()
{
    if (!m_rows.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

bool CandidatesModel::has(const Design& design) const
{
    return std::any_of(m_rows.begin(), m_rows.end(),
                       [&](const Candidate& row) { return row.design == design; });
}

int CandidatesModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int CandidatesModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant CandidatesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
        case Mark:
            return tr("Tune");
        case Tube:
            return tr("Tube");
        case Length:
            return displayText(fieldOf(Variable::FreeLength).label);
        case Stretch:
            return displayText(fieldOf(Variable::Stretch).label);
        case Elevation:
            return displayText(fieldOf(Variable::Elevation).label);
        case Place:
            return tr("Where it is held");
        case FullPack:
            return tr("Worst, full pack");
        case EmptyPack:
            return tr("Worst, empty pack");
        case Clean:
            return tr("Clean in 9 of 10 builds");
        case Robust:
            return tr("Worst in 9 of 10 builds");
        default:
            return {};
    }
}

QString CandidatesModel::marks(std::size_t row) const
{
    const Design& design = m_rows[row].design;
    QStringList marks;
    if (m_isSearch && row == m_mostRobust)
        marks << tr("most robust");
    if (m_isSearch && design == m_best)
        marks << tr("best as planned");
    if (design == m_present)
        marks << tr("present");
    else if (design == m_before)
        marks << tr("before");
    return marks.isEmpty() ? tr("another") : marks.join(tr(", "));
}

QString CandidatesModel::text(int row, int column) const
{
    const Candidate& shown = candidate(row);
    switch (column) {
        case Mark:
            return marks(static_cast<std::size_t>(row));
        case Tube:
            return tubeText(stockOf(shown.design.tube));
        case Length:
            return lengthText(shown.design.mounts.free_length_mm);
        case Stretch:
            return stretchText(valueOf(shown.design, Variable::Stretch));
        case Elevation:
            return elevationText(shown.design);
        case Place: {
            const QString moved = placeText(shown.design, m_before);
            return moved.isEmpty() ? tr("as before") : moved;
        }
        case FullPack:
            return verdictText(shown.evaluation.cruise.full, shown.evaluation);
        case EmptyPack:
            return verdictText(shown.evaluation.cruise.empty, shown.evaluation);
        case Clean:
            return cleanText(*shown.robust);
        case Robust:
            return p90Text(*shown.robust);
        default:
            return {};
    }
}

QVariant CandidatesModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    const Evaluation& evaluation = candidate(index.row()).evaluation;
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column());
        case Qt::ToolTipRole:
            if (!evaluation.feasible() &&
                (index.column() == FullPack || index.column() == EmptyPack))
                return displayText(violationText(*evaluation.violated));
            return text(index.row(), index.column());
        case Qt::AccessibleTextRole:
            return tr("%1: %2").arg(
                headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                text(index.row(), index.column()));
        case Qt::ForegroundRole:
            return m_isStale
                       ? QVariant(QApplication::palette().color(QPalette::Disabled, QPalette::Text))
                       : QVariant();
        default:
            return {};
    }
}

}  // namespace stillbay::ui
