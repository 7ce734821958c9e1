// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"
#include "ui/document/document.h"
#include "ui/widgets/field_spec.h"

#include <QWidget>

#include <optional>

class QCheckBox;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace stillbay::ui {

class NumberBox;
class ProblemLabel;

/// One field of the craft form: label, number boxes, and the reason when an entry is refused.
/// Reads and writes the document; the units are the field table's. A value of which the craft says
/// that it is typical or estimated is marked so beside the label, until one is typed, the same or
/// another: then nothing is said of its origin any more.
class FieldRow final : public QWidget {
    Q_OBJECT
public:
    /// @param noneWord  for a field that may be left out: what leaving it out means ("solid").
    ///                  Empty: the row cannot switch between the two and shows none greyed.
    /// @param start     what a field that was left out starts from when it is given
    FieldRow(Document& document, FieldSpec spec, const QString& noneWord = {}, double start = 0.0,
             QWidget* parent = nullptr);

    const FieldSpec& spec() const { return m_spec; }

    /// The value in use while the field is left out; shown greyed and marked as an estimate.
    void setEstimate(std::optional<double> value);

signals:
    void remade();  ///< it has more boxes now, or fewer

private:
    /// What of the craft the row shows.
    struct Shown {
        std::vector<std::optional<double>> values;
        std::optional<Source> source;

        bool operator==(const Shown&) const = default;
    };

    void makeBoxes();
    void makeBox(std::size_t index);
    void makeListButtons();
    Shown newest() const;
    void follow();
    void refresh();
    void showWhetherGiven(bool given);
    void commit(std::size_t index, double value);
    void setGiven(bool given);
    void takeForOwn();
    void showSource();
    QString hover() const;
    QString undoText() const;

    Document& m_document;
    FieldSpec m_spec;
    QString m_noneWord;
    double m_start;
    std::optional<double> m_estimate;
    Shown m_shown;
    std::vector<NumberBox*> m_boxes;
    QLabel* m_label;
    QLabel* m_mark;  // that the value is not the builder's own
    QWidget* m_editor;
    bool m_isTyped = false;  // and not taken yet
    QHBoxLayout* m_boxRow;
    QCheckBox* m_none = nullptr;
    QToolButton* m_more = nullptr;
    QToolButton* m_fewer = nullptr;
    ProblemLabel* m_refusal;
};

}  // namespace stillbay::ui
