// SPDX-License-Identifier: MIT
#include "ui/craft/thrust_dialog.h"

#include "core/setup/sources.h"
#include "tests/ui/window_fixture.h"
#include "ui/charts/fit_chart.h"
#include "ui/craft/column_table.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/section.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDate>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>

#include <cmath>

namespace stillbay::ui {
namespace {

struct ThrustDialogTest : Window {
    ThrustDialog* ask()
    {
        for (QPushButton* button : window.findChildren<QPushButton*>())
            if (button->text() == QStringLiteral("From a thrust table…")) {
                EXPECT_FALSE(button->toolTip().isEmpty());
                button->click();
            }
        auto* const dialog = qobject_cast<ThrustDialog*>(QApplication::activeModalWidget());
        EXPECT_TRUE(dialog);
        return dialog;
    }

    static QString samplePath() { return QStringLiteral(STILLBAY_SAMPLES_DIR "/thrust-stand.csv"); }

    static QString saidBy(const QDialog& dialog)
    {
        QString all;
        for (const QLabel* label : dialog.findChildren<QLabel*>())
            if (label->isVisible())
                all += label->text() + u'\n';
        return all;
    }

    static void press(const QDialog& dialog, const char* text)
    {
        for (QPushButton* button : dialog.findChildren<QPushButton*>())
            if (button->text() == QLatin1String(text))
                return button->click();
        ADD_FAILURE() << "no button " << text;
    }

    template <class T>
    static T* in(const QDialog& dialog, const QString& name)
    {
        for (T* widget : dialog.findChildren<T*>())
            if (widget->accessibleName() == name)
                return widget;
        ADD_FAILURE() << "nothing named " << qPrintable(name);
        return nullptr;
    }
};

// Oracle: the invented sample was made with C_T = 0.1165, C_P = 0.0472, KV 868, noise of 1 % and
// one thrust misread by 100 g; eleven rows leave 0.3 % of it, taken fourfold, and the craft's
// motor figures differ by 2 %, which moves the losses, a fifth of the power, by some 0.5 %.
TEST_F(ThrustDialogTest, ATableGivesCoefficientsAndKvInOneStep)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    ThrustDialog* const dialog = ask();
    press(*dialog, "&Use it");  // nothing to use yet
    EXPECT_TRUE(saidBy(*dialog).contains(QStringLiteral("Not taken: no table")));
    dialog->openTable(samplePath());
    const QString said = saidBy(*dialog);
    EXPECT_TRUE(said.contains(QStringLiteral("Thrust coefficient: 0.11 ±"))) << qPrintable(said);
    EXPECT_TRUE(said.contains(QStringLiteral("thrust lies far off the fit: line 10.")));
    EXPECT_TRUE(said.contains(QStringLiteral("The power is electric")));
    in<QCheckBox>(*dialog, QString())->setChecked(true);
    press(*dialog, "&Use it");
    EXPECT_FALSE(QApplication::activeModalWidget());
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(document.undoStack().undoText(), QStringLiteral("take the thrust table"));

    const stillbay::Setup& now = document.setup();
    EXPECT_NEAR(*now.drive.propeller.thrust_coefficient, 0.1165, 0.012 * 0.1165);
    EXPECT_NEAR(*now.drive.propeller.power_coefficient, 0.0472, 0.017 * 0.0472);
    EXPECT_NEAR(now.drive.motor.kv_rpm_per_v, 868.0, 0.01 * 868.0);
    for (const char* key : {"drive.propeller.thrust_coefficient",
                            "drive.propeller.power_coefficient", "drive.motor.kv_rpm_per_v"}) {
        const Source* const source = sourceOf(now, key);
        ASSERT_TRUE(source) << key;
        EXPECT_EQ(source->from, Origin::Measured);
        ASSERT_TRUE(source->spread);
        EXPECT_GT(*source->spread, 0.02);  // the stand's own accuracy
        EXPECT_LT(*source->spread, 0.03);
        EXPECT_EQ(source->note, "thrust stand, thrust-stand.csv");
        EXPECT_EQ(source->date, QDate::currentDate().toString(Qt::ISODate).toStdString());
    }
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

// Oracle: thrust at a speed is in proportion to the unit, the coefficient to 1/density.
TEST_F(ThrustDialogTest, ColumnsUnitsAndTheStandCanBeChanged)
{
    open("reedbed");
    ThrustDialog* const dialog = ask();
    dialog->openTable(samplePath());
    auto* const unit = in<QComboBox>(*dialog, QStringLiteral("Unit of Thrust (g)"));
    auto* const holds = in<QComboBox>(*dialog, QStringLiteral("What Thrust (g) holds"));
    EXPECT_EQ(holds->currentText(), QStringLiteral("Thrust"));
    EXPECT_EQ(unit->currentText(), QStringLiteral("g"));
    auto* const chart = in<FitChart>(*dialog, QStringLiteral("Thrust over speed"));
    EXPECT_EQ(chart->table().rows(), 11u);
    const double grams = chart->table().columns[2].values[3];
    unit->setCurrentText(QStringLiteral("oz"));
    EXPECT_NEAR(chart->table().columns[2].values[3] / grams, 28.349523125, 1e-6);
    unit->setCurrentText(QStringLiteral("g"));
    in<NumberBox>(*dialog, QStringLiteral("Air density at the stand"))->setValue(0.6);
    EXPECT_NEAR(chart->table().columns[2].values[3], grams, 1e-9);  // what was measured stays
    press(*dialog, "&Use it");
    EXPECT_NEAR(*document.setup().drive.propeller.thrust_coefficient, 0.233, 0.003);

    ThrustDialog* const again = ask();
    again->openTable(samplePath());
    in<QComboBox>(*again, QStringLiteral("What RPM holds"))->setCurrentText("Not used");
    EXPECT_TRUE(saidBy(*again).contains(QStringLiteral("The table has no speeds")));
    EXPECT_FALSE(in<QCheckBox>(*again, QString())->isEnabled());
    in<QComboBox>(*again, QStringLiteral("What Throttle (%) holds"))->setCurrentText("Not used");
    EXPECT_TRUE(saidBy(*again).contains(QStringLiteral("No coefficients: fewer than three rows")));
    press(*again, "Cancel");
}

TEST_F(ThrustDialogTest, WhatCannotBeReadIsMarkedAndCounted)
{
    open("reedbed");
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("stand.csv"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("Drehzahl;Schub in g\n3000;150\n4000;oops\n5000;417\n6000;600\n");
    file.close();
    ThrustDialog* const dialog = ask();
    dialog->openTable(path);
    EXPECT_TRUE(saidBy(*dialog).contains(QStringLiteral("in bold in the table: 1.")));
    auto* const table = dialog->findChild<ColumnTable*>();
    const QTableWidgetItem* const cell = table->item(3, 1);  // below the two rows of choices
    ASSERT_TRUE(cell);
    EXPECT_EQ(cell->text(), QStringLiteral("oops"));
    EXPECT_TRUE(cell->font().bold());
    EXPECT_TRUE(cell->toolTip().contains(QStringLiteral("is not a number")));
    dialog->openTable(folder.filePath(QStringLiteral("none.csv")));
    EXPECT_TRUE(saidBy(*dialog).contains(QStringLiteral("Not opened: ")));
    EXPECT_EQ(table->columnCount(), 0);
    press(*dialog, "Cancel");
    EXPECT_EQ(document.undoStack().count(), 0);
}

// Whatever takes an entry has a name and says on hover what it is for; the dialog fits a small
// screen.
TEST_F(ThrustDialogTest, IsReachableAndFitsASmallScreen)
{
    open("reedbed");
    ThrustDialog* const dialog = ask();
    dialog->openTable(samplePath());
    QCoreApplication::processEvents();
    for (const QWidget* control : dialog->findChildren<QWidget*>())
        if (qobject_cast<const NumberBox*>(control) || control->inherits("QComboBox")) {
            EXPECT_FALSE(control->accessibleName().isEmpty());
            EXPECT_FALSE(control->toolTip().isEmpty()) << qPrintable(control->accessibleName());
        }
    EXPECT_LE(dialog->height(), 660);
    EXPECT_LE(dialog->width(), 1000);
    press(*dialog, "Cancel");
}

}  // namespace
}  // namespace stillbay::ui
