// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/patience.h"

#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace stillbay::ui {

/// The program itself with a window, driven through the plug-in in driver/, and with a home of its
/// own.
struct DrivenProgram : testing::Test {
    DrivenProgram()
    {
        for (const char* name : {"XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_RUNTIME_DIR"})
            environment.insert(QLatin1String(name), home.path());
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        environment.insert(QStringLiteral("QT_PLUGIN_PATH"), QStringLiteral(STILLBAY_DRIVER_DIR));
        environment.insert(QStringLiteral("QT_QPA_GENERIC_PLUGINS"),
                           QStringLiteral("stillbay-driver"));
    }

    void start(const QStringList& arguments)
    {
        process.setProcessEnvironment(environment);
        process.start(QStringLiteral(STILLBAY_PROGRAM), arguments);
        ASSERT_TRUE(process.waitForStarted());
    }

    QString ask(const QStringList& text)
    {
        process.write(text.join(u'\t').toUtf8() + '\n');
        while (process.state() == QProcess::Running) {
            while (process.canReadLine()) {
                const QByteArray line = process.readLine().trimmed();
                if (line.startsWith("= "))
                    return QString::fromUtf8(line.mid(2));
            }
            if (!process.waitForReadyRead(kPatience_ms))
                break;
        }
        ADD_FAILURE() << "no answer to " << qPrintable(text.join(u' '));
        return {};
    }

    QString texts() { return ask({QStringLiteral("texts")}); }

    bool comesToSay(const QString& text)
    {
        return QTest::qWaitFor([&] { return texts().contains(text); }, kPatience_ms);
    }

    const QTemporaryDir home;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    QProcess process;
};

}  // namespace stillbay::ui
