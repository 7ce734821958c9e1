// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/autosave.h"
#include "ui/document/unsaved_work.h"

#include <QObject>

#include <deque>

namespace stillbay::ui {

class FileActions;
class MessageBar;

/// Offers unsaved work of earlier runs, one after another, in a bar of its own. What is neither
/// restored nor discarded is offered again at the next start.
class Recovery final : public QObject {
    Q_OBJECT
public:
    Recovery(FileActions& files, Autosave& autosave, MessageBar& bar);

private:
    void offer();
    void offerWork(const Snapshot& snapshot);
    void showDamaged(UnsavedWork& work);
    void restore();
    void next();

    FileActions& m_files;
    Autosave& m_autosave;
    MessageBar& m_bar;
    std::deque<UnsavedWork> m_found;
};

}  // namespace stillbay::ui
