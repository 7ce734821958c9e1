// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/phrase.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <QWidget>

#include <vector>

class QLabel;

namespace stillbay::ui {

class ProblemLabel;
class QuietLabel;
class Verdict;

/// What the craft would be like: the verdict, how it hangs, and what speaks against flying it.
class GuideVerdict final : public QWidget {
    Q_OBJECT
public:
    explicit GuideVerdict(QWidget* parent = nullptr);

    void display(const Setup& setup, const Result<Assessment>& assessment);
    void setStale(bool stale);
    QString text() const;  ///< all that is said

private:
    Verdict* m_verdict;
    QLabel* m_hung;
    ProblemLabel* m_cautions;  // what forbids flight
    QuietLabel* m_warnings;
};

}  // namespace stillbay::ui
