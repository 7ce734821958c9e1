// SPDX-License-Identifier: MIT
#include "ui/tunes/tunes_model.h"

#include "core/assess/texts.h"
#include "core/design/design.h"
#include "ui/charts/point_text.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/quantity.h"

#include <QApplication>
#include <QDateTime>
#include <QLocale>
#include <QPalette>

namespace stillbay::ui {

TunesModel::TunesModel(Document& document, QObject* parent)
    : QAbstractTableModel(parent), m_document(document), m_tunes(document.setup().tunes)
{
    connect(&m_document, &Document::setupChanged, this, &TunesModel::setupChanged);
}

void TunesModel::setupChanged()
{
    const std::vector<Tune>& tunes = m_document.setup().tunes;
    if (tunes == m_tunes)
        return;
    if (tunes.size() == m_tunes.size()) {
        m_tunes = tunes;
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
    } else {
        beginResetModel();
        m_tunes = tunes;
        m_figures.clear();
        endResetModel();
    }
}

void TunesModel::setFigures(std::vector<Result<TuneFigures>> figures)
{
    if (figures.size() != m_tunes.size())
        return;  // of an older list; the newer one is under way
    m_figures = std::move(figures);
    m_late = false;
    if (rowCount() > 0)
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

void TunesModel::setLate(bool late)
{
    if (m_late == late)
        return;
    m_late = late;
    if (rowCount() > 0)
        emit dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
}

const Tune& TunesModel::tune(int row) const
{
    return m_tunes.at(static_cast<std::size_t>(row));
}

const TuneFigures* TunesModel::figures(int row) const
{
    const auto k = static_cast<std::size_t>(row);
    return k < m_figures.size() && m_figures[k] ? &*m_figures[k] : nullptr;
}

int TunesModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_tunes.size());
}

int TunesModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant TunesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
        case Name:
            return tr("Tune");
        case TubeSize:
            return tr("Tube");
        case Length:
            return tr("Free length");
        case Stretch:
            return tr("Stretch");
        case Worst:
            return tr("Worst in cruise");
        case Verdict:
            return tr("Verdict");
        case Curve:
            return tr("Across the throttle");
        case Notes:
            return tr("Note");
        default:
            return {};
    }
}

QString TunesModel::verdictText(int row) const
{
    const auto k = static_cast<std::size_t>(row);
    if (k >= m_figures.size())
        return {};
    if (!m_figures[k])
        return tr("no answer");
    const TuneFigures& figures = *m_figures[k];
    if (!figures.status.violated.empty())
        return displayText(figures.status.violated.front().text);
    return figures.cruise ? gradeWord(limits(), figures.cruise->worst_px())
                          : displayText(outsideCruiseText());
}

QString TunesModel::figuresText(int row) const
{
    const QString verdict = verdictText(row);
    const QString worst = text(row, Worst);
    return worst.isEmpty() ? verdict : tr("%1, %2").arg(worst, verdict);
}

Verdict::Kind TunesModel::kind(int row) const
{
    const TuneFigures* const found = figures(row);
    return found ? Verdict::kindOf(found->status) : Verdict::Kind::Failure;
}

QString TunesModel::text(int row, int column) const
{
    const Tune& shown = tune(row);
    const TuneFigures* const found = figures(row);
    switch (column) {
        case Name:
            return QString::fromStdString(shown.name);
        case TubeSize:
            return tubeText(stockOf(shown.design.tube));
        case Length:
            return lengthText(shown.design.mounts.free_length_mm);
        case Stretch:
            return shown.design.mounts.stretch
                       ? tr("%1 %").arg(
                             plainNumber(100.0 * (*shown.design.mounts.stretch - 1.0), 3))
                       : tr("by its holes");
        case Worst:
            return found && found->cruise
                       ? tr("%1 px").arg(QLocale().toString(found->cruise->worst_px(), 'f', 2))
                       : QString();
        case Verdict:
            return verdictText(row);
        case Notes:
            return QString::fromStdString(shown.notes);
        default:
            return {};
    }
}

QString TunesModel::toolTip(int row, int column) const
{
    const auto k = static_cast<std::size_t>(row);
    if (column == Verdict && k < m_figures.size() && !m_figures[k])
        return displayText(m_figures[k].error().what);
    if (column == Name) {
        const QDateTime saved =
            QDateTime::fromString(QString::fromStdString(tune(row).saved), Qt::ISODate);
        return saved.isValid()
                   ? tr("Kept on %1. Double-click or F2 renames.")
                         .arg(QLocale().toString(saved.toLocalTime(), QLocale::ShortFormat))
                   : tr("Double-click or F2 renames.");
    }
    return text(row, column);
}

QVariant TunesModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    const bool computed =
        index.column() == Worst || index.column() == Verdict || index.column() == Curve;
    switch (role) {
        case Qt::DisplayRole:
        case Qt::EditRole:
            return text(index.row(), index.column());
        case Qt::ToolTipRole:
            return toolTip(index.row(), index.column());
        case Qt::AccessibleTextRole:
            return index.column() == Curve
                       ? tr("wobble over the throttle, a drawing")
                       : tr("%1: %2").arg(
                             headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                             text(index.row(), index.column()));
        case Qt::ForegroundRole:
            if (computed && m_late)
                return QApplication::palette().color(QPalette::Disabled, QPalette::Text);
            return {};
        default:
            return {};
    }
}

Qt::ItemFlags TunesModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    if (index.column() == Name || index.column() == Notes)
        flags |= Qt::ItemIsEditable;
    return flags;
}

bool TunesModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role == Qt::EditRole && (index.column() == Name || index.column() == Notes))
        return rewrite(index.row(), index.column(), value.toString().trimmed());
    return false;
}

bool TunesModel::rewrite(int row, int column, const QString& text)
{
    if (column == Name && text.isEmpty()) {
        emit refused(tr("a kept tune needs a name"));
        return false;
    }
    const auto k = static_cast<std::size_t>(row);
    const Result<void> done =
        m_document.edit(column == Name ? tr("Rename a kept tune") : tr("Change a kept tune's note"),
                        {}, [&](Setup& setup) {
                            Tune& changed = setup.tunes.at(k);
                            (column == Name ? changed.name : changed.notes) = text.toStdString();
                        });
    emit refused(done ? QString() : displayText(done.error().what));
    return done.has_value();
}

}  // namespace stillbay::ui
