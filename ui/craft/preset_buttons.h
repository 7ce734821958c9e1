// SPDX-License-Identifier: MIT
#pragma once

#include "core/presets/apply.h"
#include "core/presets/own.h"
#include "ui/document/document.h"

#include <QWidget>

namespace stillbay::ui {

class ProblemLabel;

/// At the head of a section: fill it from a preset, or keep what is there as one.
class PresetButtons final : public QWidget {
    Q_OBJECT
public:
    PresetButtons(Document& document, PresetKind kind, QWidget* parent = nullptr);

private:
    void choose();
    void keep();

    Document& m_document;
    PresetKind m_kind;
    ProblemLabel* m_problem;
};

/// Below a list of parts: add one that is known by its kind, or a plate by its outline.
class PartButtons final : public QWidget {
    Q_OBJECT
public:
    PartButtons(Document& document, PartList list, QWidget* parent = nullptr);

signals:
    void added();  ///< at the end of the list

private:
    void open(QDialog* dialog);

    Document& m_document;
    PartList m_list;
};

}  // namespace stillbay::ui
