// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/document.h"

#include <QWidget>

class QAction;
class QSplitter;

namespace stillbay::ui {

class FindPane;
class MapView;

/// The map, and beside it, once it is wanted, the search for a tune.
class MapPage final : public QWidget {
    Q_OBJECT
public:
    explicit MapPage(Document& document, QWidget* parent = nullptr);

    MapView& map() { return *m_map; }
    FindPane& find() { return *m_find; }
    QAction* findAction() const { return m_action; }  ///< whoever has it triggered shows the page
    void openFind();
    void craftOpened();

private:
    void closeFind();

    MapView* m_map;
    FindPane* m_find;
    QSplitter* m_splitter;
    QAction* m_action;
};

}  // namespace stillbay::ui
