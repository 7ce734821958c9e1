// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "ui/document/document.h"
#include "ui/widgets/verdict.h"

#include <QAbstractTableModel>
#include <QString>

#include <vector>

namespace stillbay::ui {

/// The kept tunes as a table. Reads the document's list, renames through its undo stack, and adds
/// what each tune would do on the craft, once that is known.
class TunesModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, TubeSize, Length, Stretch, Worst, Verdict, Curve, Notes, ColumnCount };

    explicit TunesModel(Document& document, QObject* parent = nullptr);

    void setFigures(std::vector<Result<TuneFigures>> figures);  ///< in the order of the tunes
    void setLate(bool late);  ///< the figures belong to an older craft
    bool isLate() const { return m_late; }

    /// What a tune does; null while it is being worked out, and when there is no answer.
    const TuneFigures* figures(int row) const;
    const Tune& tune(int row) const;
    const Limits& limits() const { return m_document.setup().limits; }
    /// In the order of the tunes; empty while they are being worked out for another list.
    const std::vector<Result<TuneFigures>>& allFigures() const { return m_figures; }
    QString figuresText(int row) const;  ///< "0.35 px, faint"; empty: being worked out
    Verdict::Kind kind(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    void refused(const QString& why);  ///< empty: the change before was refused, this one is not

private:
    void setupChanged();
    QString text(int row, int column) const;
    QString verdictText(int row) const;
    QString toolTip(int row, int column) const;
    bool rewrite(int row, int column, const QString& text);

    Document& m_document;
    std::vector<Tune> m_tunes;  // as last shown
    std::vector<Result<TuneFigures>> m_figures;
    bool m_late = true;
};

}  // namespace stillbay::ui
