// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/widgets/result_view.h"

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include <optional>

class QBoxLayout;
class QComboBox;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace stillbay::ui {

class BayCanvas;
class BayLegend;

/// The craft in space: as drawn or at rest, still or swinging in one of its modes, slowed down and
/// drawn larger than life. At rest, dashes show where the bay is drawn. Where there is little room
/// the controls stand in two rows and the text is cut to its first sentence.
class BayView final : public QWidget, public ResultView {
    Q_OBJECT
public:
    explicit BayView(QWidget* parent = nullptr);

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool stale) override;

    void showMode(bool flight, int index);  ///< sets it swinging
    /// What this field of the setup is about lights up.
    ///
    /// @param path  "bay.parts[1].mass_g"; empty: nothing
    void setFocusedField(const QString& path);

    BayCanvas& canvas() { return *m_canvas; }
    bool swings() const { return m_frames.isActive(); }
    QString text() const { return m_sentences.join(u' '); }  ///< what is shown, in sentences
    const BayLegend& legend() const { return *m_legend; }

    QSize minimumSizeHint() const override { return {360, 320}; }

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    QBoxLayout* makeControls();
    QHBoxLayout* makeChoices();
    QHBoxLayout* makeViewButtons();
    void nameSubject();
    void fitRoom();
    void nameModes();
    const ModeFigures* mode() const;  // the one that is shown; null: still
    void place();
    QString elasticText() const;
    void findSentences();
    void showText();
    void showLegend();
    void runOrStop();

    void draw();
    void lightUp();

    Setup m_setup;
    QString m_field;         // that the form has the focus in
    bool m_everLit = false;  // the legend keeps room for it, so that the drawing does not hop
    std::optional<Assessment> m_assessment;
    BayCanvas* m_canvas;
    QComboBox* m_pose;
    QComboBox* m_motion;
    QBoxLayout* m_controls;
    QToolButton* m_subject;
    BayLegend* m_legend;
    QLabel* m_text;
    QStringList m_sentences;
    bool m_drawn = true;  // what came last is on the screen
    QTimer m_frames;
    QElapsedTimer m_clock;
};

}  // namespace stillbay::ui
