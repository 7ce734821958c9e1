// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>

#include <functional>

class QSocketNotifier;

namespace stillbay::ui {

/// Ends the program on the signals with which a desktop, a terminal or a user asks for it (SIGTERM,
/// SIGINT, SIGHUP), but brings what is unsaved to safety first, in the event loop, also below a
/// dialog. The exit status is the signal's, as without this. A second signal ends at once, should
/// the event loop not answer. What the caller of the program chose to ignore stays ignored.
class EndSignals final : public QObject {
    Q_OBJECT
public:
    /// One in a program. @param bringToSafety  must not ask anything
    explicit EndSignals(std::function<void()> bringToSafety);
    ~EndSignals() override;

private:
    void end();

    std::function<void()> m_bringToSafety;
    QSocketNotifier* m_arrived = nullptr;
};

}  // namespace stillbay::ui
