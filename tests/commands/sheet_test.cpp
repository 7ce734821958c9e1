// SPDX-License-Identifier: MIT
#include "app/commands/sheet.h"

#include "app/commands/command.h"
#include "tests/commands/changed_sample.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <sstream>
#include <vector>

namespace stillbay {
namespace {

struct SheetAnswer {
    int code;
    std::string err;
    std::optional<SheetOrder> order;  // what was asked to be written
};

SheetAnswer sheet(std::vector<std::string_view> arguments, const Result<void>& outcome = {})
{
    std::ostringstream out, err;
    SheetAnswer answer{};
    answer.code = runSheet(
        arguments,
        [&](const SheetOrder& order) {
            answer.order = order;
            return outcome;
        },
        out, err);
    answer.err = err.str();
    return answer;
}

bool isSheetLine(const std::string& text)
{
    return text.starts_with("stillbay: ") && std::count(text.begin(), text.end(), '\n') == 1 &&
           text.back() == '\n';
}

TEST(SheetCommand, OrdersTheSheetOfTheCraft)
{
    const SheetAnswer answer = sheet({kReedbed, "--output", "out.pdf"});
    ASSERT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(answer.err, "");
    ASSERT_TRUE(answer.order);
    EXPECT_EQ(answer.order->output, "out.pdf");
    EXPECT_EQ(answer.order->setup, loadSetup(std::string(kReedbed))->setup);
    EXPECT_EQ(answer.order->assessment.rest.tubes.size(), 4U);
    EXPECT_EQ(answer.order->paper, SheetPaper::OfTheLocale);
    EXPECT_EQ(answer.order->grip_mm, kUsualGrip_mm);
}

TEST(SheetCommand, TakesPaperAndGripInAnyOrder)
{
    const SheetAnswer letter =
        sheet({"--grip", "7.5", "--paper", "letter", "--output", "o.pdf", "--", kReedbed});
    ASSERT_TRUE(letter.order) << letter.err;
    EXPECT_EQ(letter.order->paper, SheetPaper::Letter);
    EXPECT_EQ(letter.order->grip_mm, 7.5);
    EXPECT_FALSE(letter.order->replace);
    const SheetAnswer a4 = sheet({kReedbed, "--paper", "a4", "--output", "o.pdf", "--grip", "0"});
    ASSERT_TRUE(a4.order) << a4.err;
    EXPECT_EQ(a4.order->paper, SheetPaper::A4);
    EXPECT_EQ(a4.order->grip_mm, 0.0);
    EXPECT_TRUE(sheet({kReedbed, "--output", "o.pdf", "--force"}).order.value().replace);
}

TEST(SheetCommand, WrongUsageIsTwoAndWritesNothing)
{
    const std::vector<std::vector<std::string_view>> wrong{
        {},
        {kReedbed},
        {"--output", "o.pdf"},
        {kReedbed, kReedbed, "--output", "o.pdf"},
        {"", "--output", "o.pdf"},
        {kReedbed, "--output"},
        {kReedbed, "--output", ""},
        {kReedbed, "--output", "o.png"},
        {kReedbed, "--output", "pdf"},
        {kReedbed, "--output", "-"},
        {kReedbed, "--output", "o.pdf", "--paper", "A3"},
        {kReedbed, "--output", "o.pdf", "--grip", "50.1"},
        {kReedbed, "--output", "o.pdf", "--grip", "-1"},
        {kReedbed, "--output", "o.pdf", "--grip", "nan"},
        {kReedbed, "--output", "o.pdf", "--grip", "6mm"},
        {kReedbed, "--output", "o.pdf", "--colour"},
        {kReedbed, "--output", kReedbed, "--force"},
    };
    for (const auto& arguments : wrong) {
        const SheetAnswer answer = sheet(arguments);
        EXPECT_EQ(answer.code, 2) << answer.err;
        EXPECT_TRUE(isSheetLine(answer.err)) << answer.err;
        EXPECT_FALSE(answer.order) << answer.err;
    }
}

TEST(SheetCommand, NeverReplacesTheCraftByItsSheet)
{
    const ChangedSample craft([](auto&) {});
    const std::string named = craft.path() + ".pdf";
    std::filesystem::create_symlink(craft.path(), named);
    const SheetAnswer answer = sheet({craft.path(), "--output", named, "--force"});
    std::filesystem::remove(named);
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(isSheetLine(answer.err)) << answer.err;
    EXPECT_FALSE(answer.order);
}

TEST(SheetCommand, TakesASuffixInCapitals)
{
    EXPECT_EQ(sheet({kReedbed, "--output", "O.PDF"}).code, 0);
}

TEST(SheetCommand, ABadFileIsOneAndNoAnswerIsThree)
{
    const SheetAnswer missing = sheet({"no-such-file", "--output", "o.pdf"});
    EXPECT_EQ(missing.code, 1);
    EXPECT_TRUE(isSheetLine(missing.err)) << missing.err;
    EXPECT_FALSE(missing.order);
    const ChangedSample buckled(crush);
    const SheetAnswer none = sheet({buckled.path(), "--output", "o.pdf"});
    EXPECT_EQ(none.code, 3);
    EXPECT_TRUE(isSheetLine(none.err)) << none.err;
    EXPECT_FALSE(none.order);
}

TEST(SheetCommand, WhatCannotBeWrittenIsOneAndNamesTheOutput)
{
    const SheetAnswer answer =
        sheet({kReedbed, "--output", "o.pdf"}, fail(Errc::BadInput, verbatim("the disk is full")));
    EXPECT_EQ(answer.code, 1);
    EXPECT_EQ(answer.err, "stillbay: the disk is full: o.pdf\n");
}

}  // namespace
}  // namespace stillbay
