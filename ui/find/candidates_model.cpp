// SPDX-License-Identifier: MIT
#include "ui/find/candidates_model.h"

#include "core/base/units.h"
#include "ui/find/find_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/distinct_numbers.h"
#include "ui/widgets/quantity.h"

#include <QApplication>
#include <QPalette>

#include <algorithm>
#include <cmath>
#include <functional>

namespace stillbay::ui {
namespace {

constexpr int kMostDecimals = 4;

bool isNumber(int column)
{
    switch (column) {
        case CandidatesModel::Length:
        case CandidatesModel::Stretch:
        case CandidatesModel::Elevation:
        case CandidatesModel::FullPack:
        case CandidatesModel::EmptyPack:
        case CandidatesModel::Clean:
        case CandidatesModel::Robust:
            return true;
        default:
            return false;
    }
}

}  // namespace

void CandidatesModel::setAnswer(const Recommendation& answer)
{
    beginResetModel();
    m_rows = rowsOf(answer);
    m_mostRobust = mostRobustOf(m_rows);
    m_isSearch = !answer.candidates.empty();
    m_best = answer.best.design;
    m_before = answer.present.design;
    writeNumbers();
    endResetModel();
}

void CandidatesModel::writeNumbers()
{
    const auto write = [&](Column column, const QString& pattern, int least, int most,
                           const std::function<double(const Candidate&)>& value) {
        std::vector<double> values;
        for (const Candidate& row : m_rows)
            values.push_back(value(row));
        m_numbers[column] = distinctNumbers(values, least, most);
        for (std::size_t k = 0; k < values.size(); ++k)
            if (std::isfinite(values[k]))
                m_numbers[column][static_cast<int>(k)] =
                    pattern.arg(m_numbers[column][static_cast<int>(k)]);
    };
    const auto worst = [](const CruiseWobble CruiseFigures::*pack) {
        return [pack](const Candidate& row) {
            return row.evaluation.feasible() ? (row.evaluation.cruise.*pack).worst_px
                                             : std::nan("");
        };
    };
    write(Length, tr("%1\u00a0mm"), 1, kMostDecimals,
          [](const Candidate& row) { return row.design.mounts.free_length_mm; });
    write(Stretch, tr("%1\u00a0%"), 1, kMostDecimals, [](const Candidate& row) {
        return kPercent * (valueOf(row.design, Variable::Stretch) - 1.0);
    });
    write(Elevation, tr("%1°"), 1, 1,
          [](const Candidate& row) { return valueOf(row.design, Variable::Elevation); });
    write(FullPack, tr("%1\u00a0px"), 2, kMostDecimals, worst(&CruiseFigures::full));
    write(EmptyPack, tr("%1\u00a0px"), 2, kMostDecimals, worst(&CruiseFigures::empty));
    write(Robust, tr("%1\u00a0px"), 2, kMostDecimals,
          [](const Candidate& row) { return row.robust->p90_px.value_or(std::nan("")); });
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
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole)
        return (isNumber(section) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter |
               Qt::TextWordWrap;
    if (role != Qt::DisplayRole)
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
        case Place: {
            const QString moved = placeText(shown.design, m_before);
            return moved.isEmpty() ? tr("as before") : moved;
        }
        case Clean:
            return cleanText(*shown.robust);
        case Robust:
            if (!shown.robust->p90_px)
                return p90Text(*shown.robust);
            [[fallthrough]];
        default:
            return m_numbers.at(static_cast<std::size_t>(column)).value(row);
    }
}

QString CandidatesModel::secondLine(int row, int column) const
{
    const Candidate& shown = candidate(row);
    switch (column) {
        case Mark: {
            QStringList parts{text(row, Length), text(row, Stretch), text(row, Elevation)};
            if (const QString moved = placeText(shown.design, m_before); !moved.isEmpty())
                parts << moved;
            if (!(stockOf(shown.design.tube) == stockOf(m_before.tube)))
                parts << text(row, Tube);
            return parts.join(tr(", "));
        }
        case FullPack:
            return shown.evaluation.feasible() ? tr("empty %1").arg(text(row, EmptyPack))
                                               : QString();
        case Robust:
            return tr("clean %1").arg(text(row, Clean));
        default:
            return {};
    }
}

QString CandidatesModel::toolTip(int row, int column) const
{
    const Evaluation& evaluation = candidate(row).evaluation;
    if (!evaluation.feasible() && (column == FullPack || column == EmptyPack))
        return displayText(violationText(*evaluation.violated));
    const QString more = secondLine(row, column);
    return more.isEmpty() ? text(row, column) : text(row, column) + u'\n' + more;
}

QVariant CandidatesModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column());
        case kSecondLine:
            return secondLine(index.row(), index.column());
        case Qt::ToolTipRole:
            return toolTip(index.row(), index.column());
        case Qt::TextAlignmentRole:
            return QVariant((isNumber(index.column()) ? Qt::AlignRight : Qt::AlignLeft) |
                            Qt::AlignVCenter);
        case Qt::AccessibleTextRole:
            return tr("%1: %2").arg(
                headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                toolTip(index.row(), index.column()));
        case Qt::ForegroundRole:
            return m_isStale
                       ? QVariant(QApplication::palette().color(QPalette::Disabled, QPalette::Text))
                       : QVariant();
        default:
            return {};
    }
}

}  // namespace stillbay::ui
