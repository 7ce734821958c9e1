// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/patience.h"

#include <QProcess>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace stillbay::ui {

// The program as a shell without a display starts it.
struct Program : testing::Test {
    Program()
    {
        environment = QProcessEnvironment::systemEnvironment();
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
            environment.remove(QLatin1String(name));
        environment.insert(QStringLiteral("XDG_CONFIG_HOME"), folder.path());
        environment.insert(QStringLiteral("XDG_STATE_HOME"), folder.path());
    }

    int run(const QStringList& arguments)
    {
        return runTool(QStringLiteral(STILLBAY_PROGRAM), arguments);
    }

    int runTool(const QString& tool, const QStringList& arguments)
    {
        QProcess process;
        process.setProcessEnvironment(environment);
        if (!outputFile.isEmpty())
            process.setStandardOutputFile(outputFile);
        process.start(tool, arguments);
        process.write(input);
        process.closeWriteChannel();
        if (!process.waitForFinished(kPatience_ms) || process.exitStatus() != QProcess::NormalExit)
            return -1;
        out = process.readAllStandardOutput();
        err = process.readAllStandardError();
        return process.exitCode();
    }

    QTemporaryDir folder;
    QProcessEnvironment environment;
    QByteArray input;    // on standard input
    QString outputFile;  // takes standard output; empty: out does
    QByteArray out, err;
};

}  // namespace stillbay::ui
