// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/tune_figures.h"
#include "core/search/map.h"
#include "ui/document/background.h"
#include "ui/document/document.h"
#include "ui/map/map_field.h"

#include <QPointF>
#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QPushButton;
class QToolButton;

namespace stillbay::ui {

class MapChart;
class MapControls;
class MapPreview;
class ProblemLabel;
class ThinProgress;
class Verdict;

/// The wobble over two variables, worked out anew in the background while the view is seen and the
/// craft has changed in more than those two.
class MapView final : public QWidget {
    Q_OBJECT
public:
    explicit MapView(Document& document, QWidget* parent = nullptr);

    MapChart& chart() { return *m_chart; }
    MapControls& controls() { return *m_controls; }
    MapPreview& preview() { return *m_preview; }
    QString sentences() const;
    void lookAround();  ///< another craft: the usual ranges around its design
    bool isComputing() const { return m_job.isDue(); }
    bool isCurrent() const;  ///< the whole map of the craft as it is
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    struct Answer {
        DesignMap map;
        std::shared_ptr<const Evaluator> evaluator;
        bool isWhole = false;
    };
    /// What a map depends on: the craft without what the map sets, and the axes.
    struct Key {
        Setup craft;
        MapAxis x, y;
        bool level = true;
        bool operator==(const Key&) const = default;
    };

    QWidget* makeLeft();
    QWidget* makeRight();
    Key keyNow() const;
    Hanging hanging() const;
    void craftChanged();
    void refresh();
    void compute();
    void keep(const Answer& answer);
    Setup craftAt(double x, double y) const;
    void take(double x, double y);
    void look(double x, double y);
    void lookAway();
    void showSettings();
    void takeBest();
    void drawMap();
    void drawMarks();
    void display();
    void showBest(std::size_t node);
    void showState();

    Document& m_document;
    MapChart* m_chart;
    MapControls* m_controls;
    Verdict* m_verdict;
    QPushButton* m_takeBest;
    ProblemLabel* m_refusal;
    QLabel* m_state;
    ThinProgress* m_progress;
    MapPreview* m_preview;
    QWidget* m_settings;            // the right side
    QToolButton* m_settingsButton;  // ticked: it is wanted
    std::optional<QPointF> m_pointed;
    std::optional<Key> m_wanted, m_shown;
    std::optional<Answer> m_answer;  // for m_shown
    std::optional<Error> m_failure;
    Background<Key, Answer> m_job;  // last: they are gone before what they report to
    Background<Setup, TuneFigures> m_look;
};

}  // namespace stillbay::ui
