// SPDX-License-Identifier: MIT
#include <QApplication>
#include <QFontDatabase>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <clocale>
#include <cstdio>

// An application without a screen, with its own settings; without a font all text would be missing
// and no test would see it.
int main(int argc, char** argv)
{
    const QTemporaryDir home;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("XDG_CONFIG_HOME", home.path().toLocal8Bit());
    qputenv("XDG_STATE_HOME", home.path().toLocal8Bit());
    qputenv("XDG_RUNTIME_DIR", home.path().toLocal8Bit());
    testing::InitGoogleTest(&argc, argv);
    if (!std::setlocale(LC_ALL, "")) {  // as the application does, which would not mind
        std::fputs("the language that the environment names is not installed\n", stderr);
        return 1;
    }
    QApplication application(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion"));
    QApplication::setOrganizationName(QStringLiteral("stillbay-test"));
    QApplication::setApplicationName(QStringLiteral("stillbay-test"));
    if (QFontDatabase::families().isEmpty()) {
        std::fputs("no font is installed: the window's tests would look at empty labels\n", stderr);
        return 1;
    }
    return RUN_ALL_TESTS();
}
