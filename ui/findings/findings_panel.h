// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/base/result.h"
#include "core/setup/setup.h"
#include "ui/widgets/paced.h"
#include "ui/widgets/verdict.h"

#include <QString>
#include <QWidget>

#include <functional>

class QTextBrowser;

namespace stillbay::ui {

/// The assessment in words: the verdict for cruise, the sentences, what to watch out for, the
/// modes, how the bay rests, and what to look after before flying.
class FindingsPanel final : public QWidget {
    Q_OBJECT
public:
    explicit FindingsPanel(QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setFailure(const Error& error);
    void setStale(bool stale);
    void addBelow(QWidget* widget);  ///< under the words, where it does not scroll away

    QString text() const;    ///< all that is said, plain
    bool isCurrent() const;  ///< no newer words are waiting

signals:
    /// A mode was asked to be shown, by its place among the six, in flight or on the bench.
    void modeWanted(bool flight, int index);
    void fieldWanted(const QString& path);  ///< the builder asks where a fault lies

private:
    struct Words {
        Verdict::Kind kind = Verdict::Kind::None;
        QString headline, detail, toolTip;
        std::function<QString()> page;  ///< put together when it is written
    };

    void say(Words words);
    void writeVerdict();
    void writeText();

    Verdict* m_verdict;
    QTextBrowser* m_text;
    Words m_newest;
    QString m_written;  // of the newest, on screen
    Paced m_answer, m_page;
};

}  // namespace stillbay::ui
