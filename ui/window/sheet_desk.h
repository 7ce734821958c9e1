// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/widgets/result_view.h"

#include <QObject>

#include <functional>
#include <optional>

class QAction;
class QWidget;

namespace stillbay::ui {

class MessageBar;

/// The window's command for the build sheet: opens it once the answer belongs to the craft as it
/// is now, and says why where there is none.
class SheetDesk final : public QObject, public ResultView {
    Q_OBJECT
public:
    /// @param grip_mm  tells what each clamp holds at the moment
    SheetDesk(const Document& document, std::function<double()> grip_mm, QWidget& window);

    QAction* action() const { return m_action; }
    MessageBar* messages() const { return m_messages; }  ///< of the desk alone, to be laid out

    void setResult(const Setup& setup, const Result<Assessment>& assessment) override;
    void setStale(bool) override {}

    void show();

private:
    void showIfCurrent();

    const Document& m_document;
    std::function<double()> m_grip_mm;
    QWidget& m_window;
    MessageBar* m_messages;
    QAction* m_action;
    Setup m_setup;
    std::optional<Result<Assessment>> m_assessment;  // of m_setup
    bool m_wanted = false;
};

}  // namespace stillbay::ui
