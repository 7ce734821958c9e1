// SPDX-License-Identifier: MIT
#pragma once

#include <QTextBrowser>

#include <functional>

namespace stillbay::ui {

/// Shows pages of the help. Links lead from page to page and to headings; those to the web are
/// left to the desktop, and it says so of a page that is not part of the program.
class HelpBrowser final : public QTextBrowser {
    Q_OBJECT
public:
    /// @param writtenPage  the page that is no file
    explicit HelpBrowser(std::function<QString()> writtenPage, QWidget* parent = nullptr);

    void open(const QUrl& url);
    void goTo(const QTextBlock& block);

signals:
    void linkIsDead(const QString& target);

protected:
    QVariant loadResource(int type, const QUrl& url) override;

private:
    void follow(const QUrl& link);
    void ruleTables();

    std::function<QString()> m_writtenPage;
};

}  // namespace stillbay::ui
