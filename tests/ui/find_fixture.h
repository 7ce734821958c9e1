// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/window_fixture.h"
#include "ui/find/find_pane.h"

#include <QAbstractItemModel>
#include <QCheckBox>
#include <QDoubleSpinBox>
#include <QPushButton>
#include <QRadioButton>
#include <QSettings>
#include <QTableView>

namespace stillbay::ui {

/// The window with the search for a tune beside the map; nothing is remembered from before.
struct FindTest : Window {
    FindTest() { QSettings().clear(); }
    ~FindTest() override { QSettings().clear(); }

    void openSearch(const char* sample)
    {
        open(sample);
        openSearch(window);
    }

    void openSearch(MainWindow& opened)
    {
        opened.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&opened));
        QTest::keyClick(&opened, Qt::Key_T, Qt::ControlModifier);
        search = opened.findChild<FindPane*>();
        ASSERT_NE(search, nullptr);
        ASSERT_TRUE(search->isVisible());
        for (QAbstractButton* section : search->findChildren<QAbstractButton*>())
            if (section->objectName().startsWith(QStringLiteral("view.section.")))
                section->setChecked(true);
        QCoreApplication::processEvents();  // laid out
    }

    QPushButton* button(const QString& text)
    {
        for (QPushButton* found : search->findChildren<QPushButton*>())
            if (QString(found->text()).remove(u'&') == text)
                return found;
        ADD_FAILURE() << "no button " << qPrintable(text);
        return nullptr;
    }

    void press(const QString& text) { QTest::mouseClick(button(text), Qt::LeftButton); }

    template <class T>
    T* inSearch(const QString& name)
    {
        for (T* widget : search->findChildren<T*>())
            if (widget->accessibleName() == name)
                return widget;
        ADD_FAILURE() << "nothing is named " << qPrintable(name);
        return nullptr;
    }

    QCheckBox* tick(const QString& text)
    {
        for (QCheckBox* box : search->findChildren<QCheckBox*>())
            if (box->text().remove(u'&') == text)
                return box;
        ADD_FAILURE() << "no check box " << qPrintable(text);
        return nullptr;
    }

    void type(const QString& box, const QString& number)
    {
        auto* const spin = inSearch<QAbstractSpinBox>(box);
        spin->setFocus();
        spin->selectAll();
        QTest::keyClicks(spin, number);
        QTest::keyClick(spin, Qt::Key_Return);
    }

    void await()
    {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !search->isRunning(); }, kPatience_ms));
        QCoreApplication::processEvents();
    }

    QTableView& table() { return *inSearch<QTableView>(QStringLiteral("Tunes found")); }
    QTableView& stock() { return *inSearch<QTableView>(QStringLiteral("Tube stock")); }
    int rows() { return table().model()->rowCount(); }

    QString cell(int row, const QString& heading)
    {
        const QAbstractItemModel& model = *table().model();
        for (int column = 0; column < model.columnCount(); ++column)
            if (model.headerData(column, Qt::Horizontal).toString() == heading)
                return model.index(row, column).data().toString();
        ADD_FAILURE() << "no column " << qPrintable(heading);
        return {};
    }

    /// The number in a cell, without its unit.
    double number(int row, const QString& heading)
    {
        return QLocale().toDouble(cell(row, heading).section(QChar::Nbsp, 0, 0));
    }

    QString text() { return inSearch<QLabel>(QStringLiteral("What to cut"))->text(); }

    // All texts beside the controls.
    QString said() const
    {
        QStringList texts;
        for (const QLabel* label : search->findChildren<QLabel*>())
            if (label->isVisible())
                texts << label->text();
        return texts.join(u'\n');
    }

    bool says(const QString& part) const { return said().contains(part); }

    FindPane* search = nullptr;
};

}  // namespace stillbay::ui
