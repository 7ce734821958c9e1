// SPDX-License-Identifier: MIT
#include "ui/document/settings_file.h"

#include <QApplication>
#include <QFontDatabase>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <clocale>
#include <cstdio>

namespace {

// A test ends with the first ASSERT that fails, in a fixture's function too: what comes behind
// would read an answer that is not there.
class Ending final : public testing::EmptyTestEventListener {
    void OnTestPartResult(const testing::TestPartResult& result) override
    {
        if (result.fatally_failed())
            throw testing::AssertionException(result);
    }
};

}  // namespace

// An application without a screen unless one is asked for, with its own settings; without a font
// all text would be missing and no test would see it.
int main(int argc, char** argv)
{
    const QTemporaryDir home;
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("XDG_CONFIG_HOME", home.path().toLocal8Bit());
    qputenv("XDG_STATE_HOME", home.path().toLocal8Bit());
    qputenv("XDG_RUNTIME_DIR", home.path().toLocal8Bit());
    testing::InitGoogleTest(&argc, argv);
    testing::UnitTest::GetInstance()->listeners().Append(new Ending);  // gtest's own; the last
    if (!std::setlocale(LC_ALL, "")) {  // as the application does, which would not mind
        std::fputs("the language that the environment names is not installed\n", stderr);
        return 1;
    }
    QApplication application(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion"));
    QApplication::setOrganizationName(QStringLiteral("stillbay-test"));
    QApplication::setApplicationName(QStringLiteral("stillbay-test"));
    stillbay::ui::useSettingsFile();
    if (QFontDatabase::families().isEmpty()) {
        std::fputs("no font is installed: the window's tests would look at empty labels\n", stderr);
        return 1;
    }
    return RUN_ALL_TESTS();
}
