// SPDX-License-Identifier: MIT
#pragma once

#include <QByteArray>
#include <QHash>
#include <QSize>

class QMainWindow;

namespace stillbay::ui {

/// How large a window is at first: the usual size, or what the screen leaves beside panels, less
/// the frame and title bar that the desktop puts around it.
QSize firstSize(const QSize& available);

/// What a window remembers from one run to the next: its place and size, and the state of each
/// splitter, tab widget, choice and button with a tick whose object name begins with "view.". Made
/// once the window is whole; that state is what reset() goes back to.
class Session final {
public:
    explicit Session(QMainWindow& window);

    void restore();  ///< a layout of another version is left alone
    void store() const;
    void reset();

private:
    using State = QHash<QString, QByteArray>;  // by object name
    State look() const;
    void arrange(const State& state);

    QMainWindow& m_window;
    State m_first;
};

}  // namespace stillbay::ui
