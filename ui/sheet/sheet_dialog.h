// SPDX-License-Identifier: MIT
#pragma once

#include "ui/sheet/build_sheet.h"

#include <QDialog>
#include <QPrinter>

class QComboBox;
class QLabel;
class QPrintPreviewWidget;
class QToolButton;

namespace stillbay::ui {

class MessageBar;

/// Shows the build sheet page by page, saves it as PDF, prints it.
class SheetDialog final : public QDialog {
    Q_OBJECT
public:
    SheetDialog(BuildSheet sheet, QWidget* parent);

    /// What goes wrong is told above the pages.
    bool saveTo(const QString& path);
    QString message() const;  ///< empty: nothing went wrong
    int pageCount() const;

private:
    Paper paper() const;
    void layOut();
    void takePaper();
    void turnTo(int page);
    void showPageNumber();
    void askAndSave();
    void print();

    BuildSheet m_sheet;
    QPrinter m_printer;
    MessageBar* m_messages;
    QComboBox* m_paper;
    QPrintPreviewWidget* m_preview;
    QToolButton* m_back;
    QToolButton* m_onward;
    QLabel* m_number;
};

}  // namespace stillbay::ui
