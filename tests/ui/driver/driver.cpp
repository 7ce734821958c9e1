// SPDX-License-Identifier: MIT
#include "tests/ui/driver/driver.h"

#include <QAbstractButton>
#include <QApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QSlider>
#include <QSocketNotifier>

#include <cstdio>
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
        for (QWidget* widget : QApplication::allWidgets())
            if (widget->accessibleName() == text[1])
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
