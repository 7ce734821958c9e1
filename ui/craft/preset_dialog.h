// SPDX-License-Identifier: MIT
#pragma once

#include "ui/craft/preset_entries.h"
#include "ui/document/document.h"

#include <QDialog>

class QLabel;
class QListWidget;
class QPushButton;

namespace stillbay::ui {

class ProblemLabel;

/// A list of presets beside what the chosen one fills in, how far such things differ and where that
/// is known from. Enter, a double click or the button takes it, in one undo step.
class PresetDialog final : public QDialog {
    Q_OBJECT
public:
    struct Spec {
        QString title;
        QString undoText;
        std::function<std::vector<PresetEntry>()> entries;
        std::function<Result<void>(const PresetEntry&)> forget;  ///< empty: none is the builder's
    };

    PresetDialog(Document& document, Spec spec, QWidget* parent);

    const std::vector<PresetEntry>& entries() const { return m_entries; }

private:
    void fillList();
    void showChosen();
    const PresetEntry* chosen() const;
    void use();
    void forget();

    Document& m_document;
    Spec m_spec;
    std::vector<PresetEntry> m_entries;
    QListWidget* m_list;
    QLabel* m_values;
    QLabel* m_source;
    ProblemLabel* m_problem;
    QPushButton* m_use;
    QPushButton* m_forget;
};

}  // namespace stillbay::ui
