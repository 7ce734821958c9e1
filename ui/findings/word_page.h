// SPDX-License-Identifier: MIT
#pragma once

#include "ui/widgets/paced.h"

#include <QTextBrowser>

#include <functional>

namespace stillbay::ui {

/// A page of words that follows the craft: written once the hand rests, without scrolling the
/// reader away. A link is told, not followed.
class WordPage final : public QTextBrowser {
    Q_OBJECT
public:
    explicit WordPage(const QString& accessibleName, QWidget* parent = nullptr);

    /// @param html  asked when it is written
    void say(std::function<QString()> html);
    void goToTop();  ///< and is there when the next words are written
    bool isCurrent() const { return !m_pace.isDue(); }  ///< no newer words are waiting

private:
    void write();

    std::function<QString()> m_newest;
    QString m_written;
    bool m_toTop = false;
    Paced m_pace;
};

}  // namespace stillbay::ui
