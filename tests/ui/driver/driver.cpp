// SPDX-License-Identifier: MIT
#include "tests/ui/driver/driver.h"

#include <QAbstractButton>
#include <QApplication>
#include <QDoubleSpinBox>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QSlider>
#include <QSocketNotifier>
#include <QTabWidget>

#include <cstdio>
#include <dlfcn.h>
#include <iostream>
#include <string>
#include <unistd.h>

namespace {

// Loaded by Qt into the real program, as an input device is: reads commands from standard input,
// one a line with tabs between the words, and answers each with one line that begins with "= ".
//   key NAME SEQUENCE   types it on the widget of that accessible name
//   press TEXT          presses the visible button of that text, and answers when all is done
//   ask TEXT            the same, but does not wait: for buttons that open a dialog
//   value NAME          of the slider
//   number NAME NUMBER  into the box of that accessible name
//   tab TEXT            shows the page of that name
//   row TEXT            chooses the row of a list that begins so
//   fault FOLDER AT HOW faults/disk_fault.h, where that is loaded
//   texts               all visible labels
class Driver final : public QObject {
public:
    Driver() : m_input(STDIN_FILENO, QSocketNotifier::Read)
    {
        connect(&m_input, &QSocketNotifier::activated, this, [this] { read(); });
    }

private:
    void read()
    {
        char bytes[4096];
        const ssize_t count = ::read(STDIN_FILENO, bytes, sizeof bytes);
        if (count <= 0) {
            m_input.setEnabled(false);
            return;
        }
        m_pending += QByteArray(bytes, static_cast<qsizetype>(count));
        for (qsizetype end = m_pending.indexOf('\n'); end >= 0; end = m_pending.indexOf('\n')) {
            const QStringList text = QString::fromUtf8(m_pending.left(end)).split(u'\t');
            m_pending.remove(0, end + 1);
            std::cout << "= " << answer(text).toStdString() << std::endl;
        }
    }

    static QString answer(const QStringList& text)
    {
        if (text[0] == QStringLiteral("texts"))
            return texts();
        if (text[0] == QStringLiteral("press") || text[0] == QStringLiteral("ask"))
            return press(text[1], text[0] == QStringLiteral("ask"));
        if (text[0] == QStringLiteral("tab"))
            return showPage(text[1]);
        if (text[0] == QStringLiteral("row"))
            return chooseRow(text[1]);
        if (text[0] == QStringLiteral("fault"))
            return arm(text);
        for (QWidget* widget : QApplication::allWidgets())
            if (auto* const box = qobject_cast<QDoubleSpinBox*>(widget);
                box && text[0] == QStringLiteral("number") && box->accessibleName() == text[1]) {
                box->setValue(text[2].toDouble());
                return QStringLiteral("done");
            } else if (widget->accessibleName() == text[1])
                return text[0] == QStringLiteral("value")
                           ? QString::number(qobject_cast<QSlider*>(widget)->value())
                           : type(*widget, QKeySequence(text[2]));
        return QStringLiteral("not found");
    }

    static QString press(const QString& text, bool later)
    {
        for (QWidget* widget : QApplication::allWidgets()) {
            auto* const button = qobject_cast<QAbstractButton*>(widget);
            if (!button || !button->isVisible() || button->text() != text)
                continue;
            if (later)
                QMetaObject::invokeMethod(button, &QAbstractButton::click, Qt::QueuedConnection);
            else
                button->click();
            return QStringLiteral("done");
        }
        return QStringLiteral("not found");
    }

    static QString showPage(const QString& title)
    {
        for (QWidget* widget : QApplication::allWidgets())
            if (auto* const tabs = qobject_cast<QTabWidget*>(widget))
                for (int k = 0; k < tabs->count(); ++k)
                    if (tabs->tabText(k) == title) {
                        tabs->setCurrentIndex(k);
                        return QStringLiteral("done");
                    }
        return QStringLiteral("not found");
    }

    static QString chooseRow(const QString& beginning)
    {
        for (QWidget* widget : QApplication::allWidgets())
            if (auto* const list = qobject_cast<QListWidget*>(widget))
                for (int k = 0; k < list->count(); ++k)
                    if (list->item(k)->text().startsWith(beginning)) {
                        list->setCurrentRow(k);
                        return QStringLiteral("done");
                    }
        return QStringLiteral("not found");
    }

    static QString arm(const QStringList& text)
    {
        using Arm = void (*)(const char*, const char*, int, const char*);
        const auto arm = reinterpret_cast<Arm>(::dlsym(RTLD_DEFAULT, "stillbayDiskFault"));
        if (!arm)
            return QStringLiteral("not found");
        arm(text[1].toLocal8Bit(), nullptr, text[2].toInt(), text[3].toLocal8Bit());
        return QStringLiteral("done");
    }

    static QString type(QWidget& widget, const QKeySequence& keys)
    {
        for (int k = 0; k < keys.count(); ++k)
            for (const QEvent::Type kind : {QEvent::KeyPress, QEvent::KeyRelease}) {
                QKeyEvent event(kind, keys[uint(k)].key(), keys[uint(k)].keyboardModifiers());
                QApplication::sendEvent(&widget, &event);
            }
        return QStringLiteral("done");
    }

    static QString texts()
    {
        QStringList found;
        for (const QWidget* widget : QApplication::allWidgets())
            if (const auto* const label = qobject_cast<const QLabel*>(widget))
                if (label->isVisible())
                    found << label->text().simplified();
        return found.join(QStringLiteral(" | "));
    }

    QSocketNotifier m_input;
    QByteArray m_pending;
};

}  // namespace

QObject* DriverPlugin::create(const QString& /*name*/, const QString& /*specification*/)
{
    return new Driver;
}
