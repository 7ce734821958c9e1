// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "ui/bench/figure_table.h"
#include "ui/document/document.h"
#include "ui/widgets/paced.h"

#include <QWidget>

#include <functional>
#include <optional>

class QHBoxLayout;
class QPushButton;
class QSlider;

namespace stillbay::ui {

class ElidedLabel;
class NumberBox;
class ProblemLabel;
class TubeDrawing;
struct TubeShape;

/// The two variables a builder sets, each as a slider and a number, and what they mean at the
/// knife and the drill. In a drilled craft the holes stay, so the stretch moves the free length.
class TubeBench final : public QWidget {
    Q_OBJECT
public:
    explicit TubeBench(Document& document, QWidget* parent = nullptr);

    void setAssessment(const Assessment& assessment);
    void clearAssessment();  ///< there is no tension to tell

    double grip_mm() const;
    void setGrip_mm(double grip_mm);  ///< what each clamp holds; not part of the craft

    /// Folded, only the sliders are left, and the figures as one line in the heading.
    void setFolded(bool folded);
    int leastHeight(bool whole) const;
    int leastWidth(bool whole) const;

private:
    struct Variable {
        QSlider* slider;
        NumberBox* box;
    };

    void makeVariables();
    void makeGrip();
    void makeHeading();
    void layOut();
    Variable makeVariable(const QString& name, const QString& unit, double step);
    void connectVariable(Variable& variable, double step, const std::function<void(double)>& edit);
    void addShortcut(QSlider& slider, const QString& name, const QKeySequence& keys);
    void editLength(double length_mm);
    void editStretch(double percent);
    void report(const Result<void>& done);
    void refresh();
    void showFacts();
    void writeFacts();
    QString factsLine() const;
    void writeHeading();
    TubeShape shape() const;
    std::vector<FigureTable::Row> comparison(const Setup& setup) const;
    QString placeText() const;
    static QString fittedElevation(const Setup& setup);
    void hangLevel();

    Document& m_document;
    Variable m_length;
    Variable m_stretch;
    NumberBox* m_grip;
    ElidedLabel* m_explanation;
    QHBoxLayout* m_heading = nullptr;
    TubeDrawing* m_drawing;
    FigureTable* m_facts;
    Paced m_figures;  // writes m_facts
    QPushButton* m_level;
    ProblemLabel* m_refusal;
    bool m_folded = false;
    double m_tension_n = 0.0;           // as fitted
    std::optional<RestFigures> m_rest;  // none: not known
};

}  // namespace stillbay::ui
