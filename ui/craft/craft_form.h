// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/presets/own.h"
#include "core/setup/sources.h"
#include "ui/document/document.h"

#include <QHash>
#include <QPointer>
#include <QScrollArea>

#include <string>
#include <vector>

class QVBoxLayout;

namespace stillbay::ui {

class BalanceButton;
class FieldRow;
class Section;

/// Every field of the craft, in sections that fold; a folded section tells its essence in a line.
class CraftForm final : public QScrollArea {
    Q_OBJECT
public:
    explicit CraftForm(Document& document, QWidget* parent = nullptr);

    /// Takes the values in use for what the craft leaves to be estimated.
    void setAssessment(const Assessment& assessment);

    /// Unfolds the section that holds the field and gives it the focus.
    void reveal(const QString& path);

signals:
    /// The keyboard is in the field of this path, "bay.parts[1].mass_g", or on a card of a list,
    /// "bay.parts[1]"; empty: on no field of the form.
    void fieldFocused(const QString& path);

private:
    void followFocus(const QWidget* focused);
    Section* addSection(const QString& title);
    Section* addSection(const QString& title, PresetKind kind);
    template <class Owner>
    void addFields(Section& section, const QString& path, const QString& spoken,
                   const Owner* (*ownerIn)(const Setup&));

    void addCraft();
    void addAirframe();
    void addDrive();
    void addBay();
    void addCamera();
    void addTube();
    void addMounts();
    void addFlight();
    QHash<Section*, OwnNumbers> ownNumbersOf(const Setup& setup) const;
    void summarise();
    void keepReadingOrder();

    Document& m_document;
    QVBoxLayout* m_layout;
    QList<QPointer<QWidget>> m_tabStops;
    std::vector<std::string> m_given;  // numbers that the tab stops belong to
    QString m_focusedField;            // its path; empty: none
    BalanceButton* m_balance = nullptr;
    QHash<QString, Section*> m_sections;    // by path
    QHash<QString, FieldRow*> m_estimated;  // rows that may stand for an estimate, by path
};

}  // namespace stillbay::ui
