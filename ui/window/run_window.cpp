// SPDX-License-Identifier: MIT
#include "ui/window/run_window.h"

#include "core/base/printable.h"
#include "ui/document/native_path.h"
#include "ui/document/settings_file.h"
#include "ui/widgets/language.h"
#include "ui/window/end_signals.h"
#include "ui/window/identity.h"
#include "ui/window/main_window.h"
#include "ui/window/marks_style.h"

#include <QApplication>

#include <cstdio>
#include <cstdlib>
#include <exception>
#include <iostream>

namespace stillbay::ui {
namespace {

constexpr int kNoDisplay = 2;
constexpr int kInternal = 3;

bool hasDisplay()
{
    return qEnvironmentVariableIsSet("QT_QPA_PLATFORM") ||
           !qEnvironmentVariableIsEmpty("DISPLAY") ||
           !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
}

[[noreturn]] void leaveWithoutDisplay()
{
    std::fputs(
        "stillbay: no display to open the window on: see stillbay --help for the commands "
        "that need none\n",
        stderr);
    std::_Exit(kNoDisplay);
}

// While the application is being made, Qt ends the program with a core dump when the display does
// not answer. One line and an exit code say it better.
void whileConnecting(QtMsgType type, const QMessageLogContext&, const QString&)
{
    if (type == QtFatalMsg)
        leaveWithoutDisplay();
}

// What Qt has to say may hold a file's name.
void printPlainly(QtMsgType type, const QMessageLogContext& context, const QString& text)
{
    std::cerr << printable(qFormatLogMessage(type, context, text).toStdString()) << std::endl;
}

}  // namespace

int runWindow(int argc, char** argv, const std::string& path, const char* version)
{
    if (!hasDisplay())
        leaveWithoutDisplay();

    qInstallMessageHandler(whileConnecting);
    QApplication application(argc, argv);
    qInstallMessageHandler(printPlainly);
    QApplication::setApplicationName(QStringLiteral("stillbay"));
    QApplication::setApplicationDisplayName(QString());
    QApplication::setOrganizationName(QStringLiteral("stillbay"));
    QApplication::setApplicationVersion(QString::fromUtf8(version));
    QApplication::setDesktopFileName(kDesktopId);
    useSettingsFile();
    QApplication::setWindowIcon(programIcon());
    frameMarks();
    const Translations translations;
    try {
        MainWindow window;
        const EndSignals endSignals([&window] { window.prepareToEnd(false); });
        window.show();
        if (!path.empty())
            window.openFile(pathFrom(path));
        return QApplication::exec();
    } catch (const std::exception& exception) {
        std::cerr << "stillbay: a fault in the program: " << printable(exception.what()) << '\n';
        return kInternal;
    }
}

}  // namespace stillbay::ui
