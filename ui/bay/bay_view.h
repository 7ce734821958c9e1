// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/widgets/result_view.h"

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include <optional>

class QComboBox;
class QHBoxLayout;
class QLabel;

namespace stillbay::ui {

class BayCanvas;

/// The craft in space: as drawn or at rest, still or swinging in one of its modes, slowed down and
/// drawn larger than life.
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
    QString text() const;  ///< what is shown, as a sentence

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    QHBoxLayout* makeControls();
    void addViewButtons(QHBoxLayout& row);
    void nameModes();
    const ModeFigures* mode() const;  // the one that is shown; null: still
    void place();
    QString elasticText() const;
    void showText();
    void runOrStop();

    void draw();
    void lightUp();

    Setup m_setup;
    QString m_field;  // that the form has the focus in
    std::optional<Assessment> m_assessment;
    BayCanvas* m_canvas;
    QComboBox* m_pose;
    QComboBox* m_motion;
    QLabel* m_text;
    bool m_drawn = true;  // what came last is on the screen
    QTimer m_frames;
    QElapsedTimer m_clock;
};

}  // namespace stillbay::ui
