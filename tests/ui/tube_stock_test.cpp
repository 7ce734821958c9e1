// SPDX-License-Identifier: MIT
#include "ui/find/tube_stock.h"

#include "tests/ui/find_fixture.h"
#include "ui/find/stock_model.h"

#include <QLineEdit>

namespace stillbay::ui {
namespace {

const QString kKey = QStringLiteral("find/drawer");

struct Stock : testing::Test {
    Stock() { QSettings().remove(QStringLiteral("find")); }

    StockTube first{8.0, 5.0, 60.0};
};

TEST_F(Stock, StartsWithThePresentTubeAloneAndIsReadBackAsWritten)
{
    EXPECT_EQ(readTubeStock(first).tubes, (std::vector<KeptTube>{{first, true}}));
    const std::vector<KeptTube> tubes{{{6.35, 3.1, 40.0}, true}, {{10.0, 6.0, 55.5}, false}};
    writeTubeStock(tubes);
    EXPECT_EQ(readTubeStock(first).tubes, tubes);
    writeTubeStock({});
    EXPECT_TRUE(readTubeStock(first).tubes.empty()) << "what was emptied stays empty";
}

TEST_F(Stock, WhatCannotBeReadIsPutAsideAndTheRestIsUsed)
{
    const QString sound = QStringLiteral(
        R"({"outer_diameter_mm":7,"bore_mm":4,"hardness_shore_a":50,"ticked":false})");
    const std::vector<KeptTube> rest{{{7.0, 4.0, 50.0}, false}};
    for (const QString& bad :
         {QStringLiteral(R"({"outer_diameter_mm":4,"bore_mm":4,"hardness_shore_a":50})"),
          QStringLiteral(R"({"outer_diameter_mm":9,"bore_mm":4,"hardness_shore_a":500})"),
          QStringLiteral(R"({"outer_diameter_mm":9,"bore_mm":"4","hardness_shore_a":50})"),
          QStringLiteral(R"({"outer_diameter_mm":9,"bore_mm":4})"), QStringLiteral("17")}) {
        const QString text = QStringLiteral("[%1,%2]").arg(sound, bad);
        QSettings().setValue(kKey, text);
        const TubeStock stock = readTubeStock(first);
        EXPECT_EQ(stock.tubes, rest) << bad.toStdString();
        ASSERT_FALSE(stock.damagedKey.isEmpty()) << bad.toStdString();
        EXPECT_EQ(QSettings().value(stock.damagedKey).toString(), text);
        EXPECT_TRUE(readTubeStock(first).damagedKey.isEmpty()) << "told once";
        EXPECT_EQ(readTubeStock(first).tubes, rest);
    }
    for (const char* broken : {"[{\"outer", "", "{}", "\xff\xfe"}) {
        QSettings().setValue(kKey, QString::fromLatin1(broken));
        const TubeStock stock = readTubeStock(first);
        EXPECT_TRUE(stock.tubes.empty()) << broken;
        EXPECT_EQ(QSettings().value(stock.damagedKey).toString(), QString::fromLatin1(broken));
    }
}

// An unquoted comma in the file of settings makes a list of what stands there.
TEST_F(Stock, WhatIsNoTextIsPutAsideAsItWas)
{
    const QStringList list{QStringLiteral("[{\"bore_mm\":6"), QStringLiteral("x")};
    QSettings().setValue(kKey, list);
    const TubeStock stock = readTubeStock(first);
    EXPECT_TRUE(stock.tubes.empty());
    EXPECT_EQ(QSettings().value(stock.damagedKey).toStringList(), list);
}

TEST_F(Stock, RefusesWhatIsNoTubeAndWhatIsThereAlready)
{
    StockModel model;
    QString why;
    QObject::connect(&model, &StockModel::refused, [&](const QString& reason) { why = reason; });
    model.setTubes({{first, true}, {{10.0, 6.0, 50.0}, true}});
    EXPECT_EQ(model.add({5.0, 5.0, 60.0}), -1);
    EXPECT_TRUE(why.contains(QStringLiteral("bore of 5 mm"))) << why.toStdString();
    EXPECT_EQ(model.add(first), -1);
    EXPECT_TRUE(why.contains(QStringLiteral("already"))) << why.toStdString();
    EXPECT_EQ(model.add({8.0, 4.0, 60.0}), 2);
    EXPECT_TRUE(why.isEmpty());
    EXPECT_FALSE(model.setData(model.index(2, 1), 8.5, Qt::EditRole));
    EXPECT_FALSE(model.setData(model.index(2, 1), 5.0, Qt::EditRole)) << "would be the first again";
    EXPECT_TRUE(model.setData(model.index(2, 1), 4.5, Qt::EditRole));
    EXPECT_TRUE(model.setData(model.index(0, 0), Qt::Unchecked, Qt::CheckStateRole));
    EXPECT_EQ(model.ticked(), (std::vector<StockTube>{{10.0, 6.0, 50.0}, {8.0, 4.5, 60.0}}));
    EXPECT_EQ(readTubeStock(first).tubes, model.tubes()) << "written at once";
}

// By hand: put in, change in place, be refused, tick, take out; then another run of the program.
TEST_F(FindTest, TheTubeStockIsFilledByHandAndSurvivesARestart)
{
    openSearch("reedbed");
    QAbstractItemModel& model = *stock().model();
    ASSERT_EQ(model.rowCount(), 1);
    press(QStringLiteral("Add the present one"));
    EXPECT_TRUE(says(QStringLiteral("Not taken: 8 × 5 mm, Shore 60 is in the tube stock already")));
    type(QStringLiteral("Outer diameter of a new tube"), QStringLiteral("6"));
    type(QStringLiteral("Bore of a new tube"), QStringLiteral("6"));
    press(QStringLiteral("Add"));
    EXPECT_TRUE(says(QStringLiteral("a bore of 6 mm does not fit into an outer diameter of 6 mm")));
    EXPECT_EQ(model.rowCount(), 1);
    type(QStringLiteral("Bore of a new tube"), QStringLiteral("3,5"));
    press(QStringLiteral("Add"));
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_FALSE(says(QStringLiteral("Not taken")));
    EXPECT_EQ(QApplication::focusWidget(), &stock());
    EXPECT_EQ(stock().currentIndex().row(), 1);

    stock().setCurrentIndex(model.index(1, 2));
    stock().setFocus();
    QTest::keyClick(&stock(), Qt::Key_F2);
    auto* const editor = stock().findChild<QAbstractSpinBox*>();
    ASSERT_NE(editor, nullptr);
    editor->selectAll();
    QTest::keyClicks(editor, QStringLiteral("45"));
    QTest::keyClick(editor, Qt::Key_Return);
    QCoreApplication::processEvents();
    EXPECT_EQ(model.index(1, 2).data(Qt::EditRole).toDouble(), 45.0);

    stock().setCurrentIndex(model.index(0, 0));
    QTest::keyClick(&stock(), Qt::Key_Space);
    EXPECT_EQ(model.index(0, 0).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    search->close();

    MainWindow next;
    next.show();
    ASSERT_TRUE(next.openFile(samplePath("quarry")));
    openSearch(next);
    ASSERT_EQ(stock().model()->rowCount(), 2);
    const std::vector<KeptTube> kept{{{8.0, 5.0, 60.0}, false}, {{6.0, 3.5, 45.0}, true}};
    EXPECT_EQ(readTubeStock({}).tubes, kept);
}

TEST_F(FindTest, ABrokenTubeStockIsShownAndTheSearchWorksOn)
{
    QSettings().setValue(kKey, QStringLiteral("not a list"));
    openSearch("saltmarsh");
    EXPECT_TRUE(says(QStringLiteral("A part of the tube stock could not be read")));
    press(QStringLiteral("Add the present one"));
    EXPECT_EQ(stock().model()->rowCount(), 1);
    EXPECT_FALSE(says(QStringLiteral("could not be read")));
}

// A second window of the program has put a tube in meanwhile.
TEST_F(FindTest, TheTubeStockIsReadAnewWhenTheSearchIsTurnedTo)
{
    openSearch("reedbed");
    writeTubeStock({{{8.0, 5.0, 60.0}, true}, {{5.0, 3.0, 30.0}, true}});
    QWidget other;
    other.show();
    other.activateWindow();
    ASSERT_TRUE(QTest::qWaitFor([&] { return QApplication::activeWindow() == &other; }));
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitFor([&] { return QApplication::activeWindow() == &window; }));
    EXPECT_EQ(stock().model()->rowCount(), 2);
}

// Without a ticked tube there is nothing to choose from.
TEST_F(FindTest, AnEmptyTubeStockIsShown)
{
    openSearch("reedbed");
    press(QStringLiteral("Add"));  // the same again: refused
    type(QStringLiteral("Bore of a new tube"), QStringLiteral("4"));
    press(QStringLiteral("Add"));
    ASSERT_EQ(stock().model()->rowCount(), 2);
    stock().setFocus();
    stock().selectRow(0);
    QTest::keyClick(&stock(), Qt::Key_Delete);
    EXPECT_EQ(readTubeStock({}).tubes, (std::vector<KeptTube>{{{8.0, 4.0, 60.0}, true}}));
    press(QStringLiteral("Remove"));
    EXPECT_EQ(stock().model()->rowCount(), 0);
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(),
              QStringLiteral("Outer diameter of a new tube"));
    for (QRadioButton* radio : search->findChildren<QRadioButton*>())
        if (QString(radio->text()).remove(u'&').contains(QStringLiteral("stock")))
            radio->setChecked(true);
    press(QStringLiteral("Find the best"));
    EXPECT_TRUE(says(QStringLiteral("no tube in the stock is ticked")));
    EXPECT_FALSE(search->isRunning());
}

}  // namespace
}  // namespace stillbay::ui
