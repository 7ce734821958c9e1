// SPDX-License-Identifier: MIT
#include "core/base/text_table.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace stillbay {
namespace {

using Cells = std::vector<std::string>;

TextTable read(const std::string& text)
{
    const Result<TextTable> table = readTextTable(text);
    EXPECT_TRUE(table) << (table ? "" : english(table.error().what)) << "\n" << text;
    return table.value_or(TextTable{});
}

std::vector<std::vector<double>> numbers(const TextTable& table)
{
    std::vector<std::vector<double>> all;
    for (const TextRow& row : table.rows) {
        all.emplace_back();
        for (const std::string& cell : row.cells)
            all.back().push_back(tableNumber(cell, table.decimal).value_or(-1));
    }
    return all;
}

std::string faultOf(const std::string& text, const TableLimits& limits = {})
{
    const Result<TextTable> table = readTextTable(text, limits);
    return table ? "" : english(table.error().what);
}

// Every way of writing the same two rows is the same two rows.
TEST(TextTable, IsReadWhateverSeparatesItsCells)
{
    const std::vector<std::vector<double>> expected{{12.5, 1340, 0.25}, {25, 2750.5, 1}};
    for (const std::string ends : {"\n", "\r\n", "\r"})
        for (const std::string mark : {"", "\xEF\xBB\xBF"})
            for (const std::string last : {"", "\n"})
                for (const auto& [head, first, second] : std::vector<std::array<std::string, 3>>{
                         {"a,b,c", "12.5,1340,0.25", "25,2750.5,1"},
                         {"a;b;c", "12,5;1340;0,25", "25;2750,5;1"},
                         {"a;b;c", "12.5;1340;0.25", "25;2750.5;1"},
                         {"a\tb\tc", "12,5\t1.340\t0,25", "25\t2.750,5\t1"},
                         {"a\tb\tc", "12.5\t1,340\t0.25", "25\t2,750.5\t1"},
                         {"a,b,c", "\"12,5\",1340,\"0,25\"", "25,\"2.750,5\",1"},
                         {" a , b , c ", " 12.5 , 1340 , 0.25 ", " 25 , 2750.5 , 1 "}}) {
                    std::string text = mark + head;
                    text += ends + first;
                    text += ends + second + (last.empty() ? "" : ends);
                    const TextTable table = read(text);
                    EXPECT_EQ(table.headings, (Cells{"a", "b", "c"})) << text;
                    EXPECT_EQ(numbers(table), expected) << text;
                    ASSERT_EQ(table.rows.size(), 2u);
                    EXPECT_EQ(table.rows[1].line, 3u);
                }
}

TEST(TextTable, NamesUnitsTitlesAndCommentsAreToldApart)
{
    const TextTable table = read(
        "Bench of the shed\n"
        "# 20 degrees\n"
        "Gas;Schub;Drehzahl\n"
        "%;g;U/min\n"
        "\n"
        "10;55;2100\n"
        "// again\n"
        "20;210;4000\n");
    EXPECT_EQ(table.headings, (Cells{"Gas", "Schub", "Drehzahl"}));
    EXPECT_EQ(table.units, (Cells{"%", "g", "U/min"}));
    ASSERT_EQ(table.rows.size(), 2u);
    EXPECT_EQ(table.rows[0].line, 6u);
    EXPECT_EQ(table.rows[1].line, 8u);
    EXPECT_EQ(table.asides, (std::vector<std::size_t>{1, 2, 7}));
}

TEST(TextTable, NothingOfARaggedTableIsLost)
{
    const TextTable table = read("a,b\n1,2\n3\n4,5,6\n7,8,\n,9\n");
    EXPECT_EQ(table.headings, (Cells{"a", "b", ""}));
    ASSERT_EQ(table.rows.size(), 5u);
    EXPECT_EQ(table.rows[1].cells, (Cells{"3", "", ""}));
    EXPECT_EQ(table.rows[2].cells, (Cells{"4", "5", "6"}));
    EXPECT_EQ(table.rows[4].cells, (Cells{"", "9", ""}));
    EXPECT_EQ(read("a;b;\n1;2;\n3;4;\n").columns(), 2u);  // a separator at the end is no column
    EXPECT_TRUE(read("1,2\n3,4\n").headings == (Cells{"", ""}));
}

TEST(TextTable, QuotedCellsKeepWhatTheyHold)
{
    const TextTable table =
        read("\"Thrust\n(g)\",\"say \"\"a\"\", b\",c\n1,2,3\n\"4\",\" 5 \",6\n");
    EXPECT_EQ(table.headings, (Cells{"Thrust (g)", "say \"a\", b", "c"}));
    EXPECT_EQ(table.rows[0].line, 3u);  // the heading took two
    EXPECT_EQ(table.rows[1].cells, (Cells{"4", "5", "6"}));
}

TEST(TextTable, OldSpreadsheetsMayWriteTheirOwnLetters)
{
    EXPECT_EQ(read("L\xE4nge;\xB5s\n1;2\n").headings, (Cells{"Länge", "µs"}));
    EXPECT_EQ(read("Länge;µs\n1;2\n").headings, (Cells{"Länge", "µs"}));
}

TEST(TextTable, WhatIsNoTableIsRefusedWithAReason)
{
    EXPECT_EQ(faultOf(""), "no row of the table has numbers in it");
    EXPECT_EQ(faultOf("a,b\nc,d\n"), "no row of the table has numbers in it");
    EXPECT_EQ(faultOf(std::string("1,2\n\0", 5)),
              "this is not plain text: save the table as CSV in UTF-8");
    EXPECT_EQ(faultOf("a,b\n1,2\n3,\"4\n"), "a quotation mark of the table is never closed");
    EXPECT_EQ(faultOf("1,2\n3,4\n5,6\n", {.rows = 2}), "the table has 3 rows, more than 2");
    EXPECT_EQ(faultOf("1,2,3\n", {.columns = 2}), "the table has 3 columns, more than 2");
    EXPECT_FALSE(faultOf(std::string(100, '1'), {.bytes = 99}).empty());
}

// Any cut of a file that is being written, and any byte in place of another, gives a table or a
// reason.
TEST(TextTable, HoldsAgainstDamagedText)
{
    const std::string whole =
        "\xEF\xBB\xBF# µ\r\n\"Gas \"\"x\"\"\";Schub (g)\r\n%;g\r\n12,5;1.234,5\r\n\"25\";−3\r\n";
    for (std::size_t length = 0; length <= whole.size(); ++length)
        (void)readTextTable(whole.substr(0, length));
    for (std::size_t at = 0; at < whole.size(); ++at)
        for (const int byte : {0, 9, 10, 13, 34, 35, 44, 48, 59, 128, 226, 255}) {
            std::string text = whole;
            text[at] = static_cast<char>(byte);
            if (const Result<TextTable> table = readTextTable(text)) {
                for (const TextRow& row : table->rows)
                    ASSERT_EQ(row.cells.size(), table->columns());
            }
        }
}

// Oracle: by hand.
TEST(TableNumber, ReadsWhatPeopleWrite)
{
    for (const auto& [cell, value] :
         std::vector<std::pair<const char*, double>>{{"12.5", 12.5},
                                                     {" 7 ", 7},
                                                     {"+3", 3},
                                                     {"-0.5", -0.5},
                                                     {"−0.5", -0.5},
                                                     {".5", 0.5},
                                                     {"53 %", 53},
                                                     {"53%", 53},
                                                     {"1,234", 1234},
                                                     {"1,234,567.25", 1234567.25},
                                                     {"1 234.5", 1234.5},
                                                     {"1\u00A0234", 1234},
                                                     {"1'234", 1234},
                                                     {"1.5e3", 1500},
                                                     {"1E-2", 0.01},
                                                     {"5.", 5}})
        EXPECT_EQ(tableNumber(cell, '.'), value) << cell;
    for (const auto& [cell, value] : std::vector<std::pair<const char*, double>>{
             {"12,5", 12.5}, {"1.234", 1234}, {"1.234,5", 1234.5}, {",5", 0.5}, {"1,5e3", 1500}})
        EXPECT_EQ(tableNumber(cell, ','), value) << cell;
    for (const char* cell : {"", " ", "%", "-", "a", "1a", "12,5", "1,23,456", "1..2", "1.2.3",
                             "nan", "inf", "0x10", "1e999", "--1", "1 2", "1;2", "12 V", "1,2345"})
        EXPECT_EQ(tableNumber(cell, '.'), std::nullopt) << cell;
    for (const char* cell : {"1.5", "1,2,3", "12.34,5"})
        EXPECT_EQ(tableNumber(cell, ','), std::nullopt) << cell;
}

}  // namespace
}  // namespace stillbay
