// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"

#include <QString>
#include <QWidget>

namespace stillbay::ui {

class WordPage;

/// The assessment in words: where it wobbles and why, the modes, why the bay turns and how it
/// rests.
class FindingsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit FindingsPanel(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setFailure(const Error& error);
    void setStale(bool stale);
    void goToTop();

    QString text() const;
    bool isCurrent() const;  ///< no newer words are waiting

signals:
    /// A mode was asked to be shown, by its place among the six, in flight or on the bench.
    void modeWanted(bool flight, int index);
    void fieldWanted(const QString& path);  ///< the builder asks where a fault lies

private:
    WordPage* m_page;
};

}  // namespace stillbay::ui
