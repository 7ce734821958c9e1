// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"
#include "ui/document/unsaved_work.h"

#include <QTimer>

namespace stillbay::ui {

/// Keeps unsaved work of a document in the state folder while there is any: written in a pause
/// after a change, at the latest 15 s after it. The craft's own file is never touched.
class Autosave final : public QObject {
    Q_OBJECT
public:
    explicit Autosave(Document& document, QObject* parent = nullptr);

    /// Writes what is unsaved at once. False: there is something, and it could not be written.
    bool writeNow();
    void drop();  ///< the builder does not want it

signals:
    void failed(const stillbay::Phrase& why);  ///< once, until it works again
    void worksAgain();

private:
    void changed();
    Result<void> write();

    Document& m_document;
    UnsavedPlace m_place;
    QTimer m_pause;
    QTimer m_latest;
    bool m_failing = false;
};

}  // namespace stillbay::ui
