// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"

#include <QWidget>

namespace stillbay::ui {

class WordPage;

/// What to watch out for: what forbids flight first, then the other warnings, then what to look
/// after before bench work and flight.
class WarningsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit WarningsPanel(QWidget* parent = nullptr);

    void setAssessment(const Assessment& assessment);
    void clearAssessment();  ///< the craft has no answer
    void setStale(bool stale);
    void goToTop();

    int count() const { return m_count; }
    bool isCurrent() const;
    QString text() const;

signals:
    void counted(int warnings);

private:
    void setCount(int count);

    WordPage* m_page;
    int m_count = 0;
};

}  // namespace stillbay::ui
