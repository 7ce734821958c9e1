// SPDX-License-Identifier: MIT
#pragma once

#include "core/advice/uncertainty.h"
#include "ui/document/background.h"
#include "ui/document/document.h"

#include <QWidget>

class QTextBrowser;

namespace stillbay::ui {

class Section;
class ThinProgress;

/// How sure the forecast is, and what to measure first. Worked out in the background while the
/// section is open and the craft has been left alone for a moment.
class UncertaintyPanel final : public QWidget {
    Q_OBJECT
public:
    explicit UncertaintyPanel(Document& document, QWidget* parent = nullptr);

    bool isCurrent() const { return m_job.isCurrent(); }
    QString text() const;
    /// "24 of 100 such crafts clean, 6 not to be flown", once it was worked out for this craft;
    /// else empty.
    const QString& share() const { return m_share; }
    Section& section() { return *m_section; }

signals:
    void changed();  ///< share() is another

private:
    void refresh();
    void deliver(const Result<Uncertainty>& uncertainty);

    Document& m_document;
    Section* m_section;
    ThinProgress* m_progress;
    QTextBrowser* m_text;
    QString m_share;
    Background<Setup, Uncertainty> m_job;  // last: it is dropped first
};

}  // namespace stillbay::ui
