// SPDX-License-Identifier: MIT
#pragma once

#include "ui/compare/compared_craft.h"

#include <QWidget>

#include <map>
#include <set>
#include <vector>

class QListWidget;
class QPushButton;

namespace stillbay::ui {

class ProblemLabel;

/// Which crafts are compared: a list with ticks, the present one first, which is always among them;
/// each with the line it is drawn with.
class CompareChoices final : public QWidget {
    Q_OBJECT
public:
    explicit CompareChoices(QWidget* parent = nullptr);

    /// What there is, the present one first. Ticks are kept by key; the first few that are new are
    /// ticked.
    void offer(const std::vector<ComparedCraft>& crafts);
    /// Place of its dash and colour; none: it is not ticked.
    std::optional<std::size_t> placeOf(const QString& key) const;
    void tick(const QString& key);
    void forget();  ///< another craft: its tunes are others

    QListWidget& list() { return *m_list; }
    ProblemLabel& problem() { return *m_problem; }

signals:
    void changed();
    void fileWanted();
    void removeWanted(const QString& key);  ///< of a file

protected:
    void changeEvent(QEvent* event) override;

private:
    void set(const QString& key, bool ticked);
    void drawLines();
    void showState();

    QListWidget* m_list;
    QPushButton* m_add;
    QPushButton* m_remove;
    ProblemLabel* m_problem;
    std::map<QString, std::size_t> m_places;  // of those ticked
    std::set<QString> m_met;                  // all that were ever offered
};

}  // namespace stillbay::ui
