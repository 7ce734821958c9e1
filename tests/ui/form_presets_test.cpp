// SPDX-License-Identifier: MIT
#include "core/presets/plate.h"
#include "core/presets/presets.h"
#include "core/setup/sources.h"
#include "core/setup/validate.h"
#include "tests/ui/form_fixture.h"
#include "ui/craft/preset_dialog.h"
#include "ui/document/own_presets.h"
#include "ui/document/state_folder.h"
#include "ui/widgets/number_box.h"

#include <QComboBox>
#include <QDialog>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

namespace stillbay::ui {
namespace {

struct FormPresets : FormExtras {
    FormPresets()
    {
        QFile::remove(ownFile());
        open("reedbed");
    }

    static QString ownFile()
    {
        return QDir(stateFolder()).filePath(QStringLiteral("presets.json"));
    }

    // Opens a dialog by its button.
    QDialog* ask(const char* button)
    {
        QPushButton* const opener = named<QPushButton>(QString::fromUtf8(button));
        opener->setFocus();
        QTest::keyClick(opener, Qt::Key_Space);
        auto* const dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        EXPECT_TRUE(dialog) << button;
        if (dialog) {
            dialog->activateWindow();
            EXPECT_TRUE(QTest::qWaitFor(
                [&] { return dialog->isAncestorOf(QApplication::focusWidget()); }, kPatience_ms));
        }
        return dialog;
    }

    PresetDialog* list(const char* button) { return qobject_cast<PresetDialog*>(ask(button)); }

    static void press(const QDialog& dialog, const char* text)
    {
        for (QPushButton* button : dialog.findChildren<QPushButton*>())
            if (button->text() == QLatin1String(text))
                return QTest::mouseClick(button, Qt::LeftButton);
        ADD_FAILURE() << "no button " << text;
    }

    static QString textOf(const QDialog& dialog, const char* name)
    {
        for (const QLabel* label : dialog.findChildren<QLabel*>())
            if (label->accessibleName() == QLatin1String(name))
                return label->text();
        return {};
    }
};

struct Offered {
    const char* button;
    const char* path;  // of the section
    std::size_t count;
};

std::vector<Offered> offered()
{
    return {{"Material of the arms: Choose a preset…", "airframe.arm", armPresets().size()},
            {"Class of motor: Choose a preset…", "drive.motor", motorPresets().size()},
            {"Kind of propeller: Choose a preset…", "drive.propeller", propellerPresets().size()},
            {"Kind of battery: Choose a preset…", "drive.battery", packPresets().size()},
            {"Kind of camera: Choose a preset…", "camera", cameraPresets().size()},
            {"Tube as sold: Choose a preset…", "tube", tubePresets().size()},
            {"Bay: Add from preset…", "bay.parts", packPresets().size() + cameraPresets().size()},
            {"Airframe: Add from preset…", "airframe.parts",
             packPresets().size() + cameraPresets().size()}};
}

// Oracle: the tables of core/presets; each, taken, is a craft that may be saved.
TEST_F(FormPresets, EveryPresetIsOfferedFillsInAndNamesItsSource)
{
    for (const Offered& section : offered()) {
        unfold(section.path);
        PresetDialog* const dialog = list(section.button);
        ASSERT_TRUE(dialog);
        auto* const names = dialog->findChild<QListWidget*>();
        ASSERT_EQ(dialog->entries().size(), section.count);
        ASSERT_EQ(names->count(), static_cast<int>(section.count));
        EXPECT_EQ(QApplication::focusWidget(), names);
        for (const PresetEntry& entry : dialog->entries()) {
            SCOPED_TRACE(entry.name.toStdString());
            EXPECT_EQ(names->currentItem()->text(), entry.name);
            EXPECT_FALSE(entry.isOwn());
            const stillbay::Setup filled = entry.fill(document.setup());
            const auto valid = validate(filled);
            EXPECT_TRUE(valid) << english(valid.error().what);
            EXPECT_NE(filled, document.setup());
            EXPECT_GT(entry.source.size(), 20);
            EXPECT_TRUE(textOf(*dialog, "Where the preset is from").contains(entry.source));
            const std::vector<PresetValue> values = entry.values(document.setup());
            EXPECT_GE(values.size(), 2u);
            for (const PresetValue& value : values) {
                EXPECT_FALSE(value.then.isEmpty()) << qPrintable(value.label);
                EXPECT_TRUE(textOf(*dialog, "What the preset fills in")
                                .contains(value.label.toHtmlEscaped()));
            }
            const QString spoken =
                names->currentItem()->data(Qt::AccessibleDescriptionRole).toString();
            EXPECT_TRUE(spoken.contains(entry.source));
            QTest::keyClick(names, Qt::Key_Down);
        }
        dialog->reject();
    }
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST_F(FormPresets, APresetIsTakenByKeyboardInOneStepAndMarked)
{
    unfold("drive.motor");
    const stillbay::Setup before = document.setup();
    PresetDialog* const dialog = list("Class of motor: Choose a preset…");
    ASSERT_TRUE(dialog);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    EXPECT_TRUE(
        textOf(*dialog, "Where the preset is from").contains(QStringLiteral("800 to 1050")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_FALSE(QApplication::activeModalWidget());
    const NumberBox* const kv = named<NumberBox>(QStringLiteral("Motors: kv"));
    EXPECT_EQ(kv->value(), motorPresets()[2].kv_rpm_per_v);
    EXPECT_EQ(kv->accessibleDescription(), QStringLiteral("typical"));
    EXPECT_EQ(document.setup().drive.motor.height_above_arm_mm,
              before.drive.motor.height_above_arm_mm);
    EXPECT_EQ(lastStep(), QStringLiteral("take a preset for the motors"));
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

TEST_F(FormPresets, WhatIsKeptIsOfferedFirstAndCanBeRemoved)
{
    unfold("tube");
    change([](auto& s) { s.tube.hardness_shore_a = 47.0; });
    const stillbay::Setup start = document.setup();
    const auto keep = [this](const QString& name) {
        QDialog* const dialog = ask("Tube as sold: Keep as preset…");
        ASSERT_TRUE(dialog);
        QTest::keyClicks(dialog->findChild<QLineEdit*>(), name);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        EXPECT_FALSE(dialog->isVisible());
    };
    keep(QStringLiteral("the blue reel"));
    keep(QStringLiteral("second reel"));
    EXPECT_EQ(document.setup(), start);
    keep(QStringLiteral("second reel"));  // in place of the first of this name
    change([](auto& s) { s.tube.hardness_shore_a = 70.0; });

    PresetDialog* dialog = list("Tube as sold: Choose a preset…");
    ASSERT_TRUE(dialog);
    auto* names = dialog->findChild<QListWidget*>();
    ASSERT_EQ(names->count(), static_cast<int>(tubePresets().size()) + 2);
    EXPECT_EQ(names->item(0)->text(), QStringLiteral("the blue reel (yours)"));
    EXPECT_EQ(names->item(1)->text(), QStringLiteral("second reel (yours)"));
    press(*dialog, "&Use it");
    EXPECT_EQ(document.setup().tube, start.tube);
    dialog = list("Tube as sold: Choose a preset…");
    ASSERT_TRUE(dialog);
    press(*dialog, "&Remove from the list");
    names = dialog->findChild<QListWidget*>();
    EXPECT_EQ(names->item(0)->text(), QStringLiteral("second reel (yours)"));
    QTest::keyClick(names, Qt::Key_Down);
    for (const QPushButton* button : dialog->findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("&Remove from the list")) {
            EXPECT_FALSE(button->isEnabled());  // the built-in ones stay
        }
    dialog->reject();
    EXPECT_EQ(ownPresets()->size(), 1u);
    EXPECT_EQ(presetEntries(PresetKind::Motor, *ownPresets()).size(), motorPresets().size());
}

// A file that this program did not write, or that was cut, is left as it is, and said.
TEST_F(FormPresets, ADamagedFileOfPresetsIsToldAndLeft)
{
    unfold("tube");
    const QByteArray damaged("{\"format\": \"stillbay-presets\", \"vers");
    {
        QFile file(ownFile());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(damaged);
    }
    named<QPushButton>(QStringLiteral("Tube as sold: Keep as preset…"))->click();
    EXPECT_FALSE(QApplication::activeModalWidget());
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("presets.json")));
    PresetDialog* const dialog = list("Tube as sold: Choose a preset…");
    ASSERT_TRUE(dialog);
    EXPECT_EQ(dialog->entries().size(), tubePresets().size());
    dialog->reject();
    QFile file(ownFile());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), damaged);
}

TEST_F(FormPresets, APackBecomesAPartOfTheBay)
{
    unfold("bay.parts");
    const std::size_t count = document.setup().bay.parts.size();
    PresetDialog* const dialog = list("Bay: Add from preset…");
    ASSERT_TRUE(dialog);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_EQ(document.setup().bay.parts.size(), count + 1);
    EXPECT_EQ(document.setup().bay.parts.back().mass_g, packPresets()[0].mass_g);
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(window.focusWidget()->accessibleName(),
              QStringLiteral("bay part %1: name").arg(count + 1));
    EXPECT_EQ(named<NumberBox>(QStringLiteral("bay part %1: mass").arg(count + 1))
                  ->accessibleDescription(),
              QStringLiteral("typical"));
}

// Oracle: by hand. 200 × 100 × 2 mm of carbon plate, 1600 kg/m³, a quarter cut out: 48 g.
TEST_F(FormPresets, APlateIsAddedByItsOutline)
{
    for (const char* where : {"Bay", "Airframe"}) {
        const bool isBay = where[0] == 'B';
        unfold(isBay ? "bay.parts" : "airframe.parts");
        const auto parts = [&] {
            return isBay ? document.setup().bay.parts : document.setup().airframe.parts;
        };
        const std::size_t count = parts().size();
        QDialog* const dialog = ask(isBay ? "Bay: Add a plate…" : "Airframe: Add a plate…");
        ASSERT_TRUE(dialog);
        const auto type = [&](const char* name, const char* keys) {
            NumberBox* const box = named<NumberBox>(QLatin1String(name));
            box->setFocus();
            box->selectAll();
            QTest::keyClicks(box, QLatin1String(keys));
            QTest::keyClick(box, Qt::Key_Return);
        };
        type("Length", "200");
        type("Width", "10 cm");
        type("Thickness", "2");
        type("Cut out", "25");
        EXPECT_TRUE(textOf(*dialog, "Outcome").contains(QStringLiteral("Mass: 48 g")))
            << qPrintable(textOf(*dialog, "Outcome"));
        press(*dialog, "&Use it");
        ASSERT_EQ(parts().size(), count + 1);
        EXPECT_NEAR(parts().back().mass_g, 48.0, 1e-9);
        EXPECT_EQ(parts().back().size_mm, (Triple{200.0, 100.0, 2.0}));
        EXPECT_EQ(lastStep(), QStringLiteral("add a plate"));
        const std::string key = std::string(isBay ? "bay" : "airframe") + ".parts[" +
                                std::to_string(count) + "].mass_g";
        EXPECT_EQ(sourceOf(document.setup(), key)->from, Origin::Estimated);
        document.undoStack().undo();
        EXPECT_EQ(parts().size(), count);
    }
}

}  // namespace
}  // namespace stillbay::ui
