// SPDX-License-Identifier: MIT
#include "core/setup/fields.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <string>
#include <string_view>
#include <variant>

namespace stillbay {
namespace {

template <class T>
void expectInside(const T& value, double min, double max)
{
    if constexpr (requires { value.has_value(); }) {
        if (value)
            expectInside(*value, min, max);
    } else if constexpr (requires { value.begin(); }) {
        for (const double entry : value)
            expectInside(entry, min, max);
    } else {
        EXPECT_GE(value, min);
        EXPECT_LE(value, max);
    }
}

template <class Owner>
class FieldsTest : public testing::Test {
};

using Owners =
    testing::Types<Part, ArmSection, Arm, Motor, Propeller, Battery, Drive, Bay, Camera, TubeKind,
                   MountPoint, Mounts, Flight, FlightNote, Limits, Source, Design>;
TYPED_TEST_SUITE(FieldsTest, Owners);

TYPED_TEST(FieldsTest, KeysAndLabelsAreUnique)
{
    std::set<std::string> keys;
    std::set<std::string> labels;
    for (const auto& field : fieldsOf<TypeParam>()) {
        EXPECT_TRUE(keys.insert(field.key).second) << field.key;
        EXPECT_TRUE(labels.insert(field.label).second) << field.key;
    }
    EXPECT_FALSE(keys.empty());
}

TYPED_TEST(FieldsTest, EveryFieldSaysWhatItIs)
{
    for (const auto& field : fieldsOf<TypeParam>()) {
        const std::string meaning = field.meaning;
        EXPECT_NE(std::string(field.label), "") << field.key;
        EXPECT_GT(meaning.size(), 20U) << field.key;
        EXPECT_EQ(meaning.back(), '.') << field.key;
    }
}

TYPED_TEST(FieldsTest, RangesAreFiniteAndStepsFit)
{
    for (const auto& field : fieldsOf<TypeParam>()) {
        EXPECT_TRUE(std::isfinite(field.min) && std::isfinite(field.max)) << field.key;
        EXPECT_LT(field.min, field.max) << field.key;
        const bool isInertia = std::string_view(field.unit) == "g·mm²";  // large in small units
        EXPECT_LE(std::abs(field.max), isInertia ? 1e9 : 1e6) << field.key;
        EXPECT_GT(field.step, 0.0) << field.key;
        EXPECT_LT(field.step, field.max - field.min) << field.key;
        EXPECT_GE(field.step, std::pow(10.0, -field.decimals)) << field.key;
        EXPECT_GE(field.decimals, 0) << field.key;
    }
}

TYPED_TEST(FieldsTest, DecimalsShowTheSmallestValue)
{
    for (const auto& field : fieldsOf<TypeParam>()) {
        const double smallest = field.min > 0.0 ? field.min : field.step;
        EXPECT_GE(smallest, std::pow(10.0, -field.decimals)) << field.key;
    }
}

TYPED_TEST(FieldsTest, MassesAndSizesAreAboveZero)
{
    for (const auto& field : fieldsOf<TypeParam>()) {
        const std::string key = field.key;
        const bool isSize = key == "mass_g" || key == "size_mm" || key.starts_with("density") ||
                            key.starts_with("youngs") || key.starts_with("width") ||
                            key.starts_with("free_length");
        EXPECT_TRUE(!isSize || field.min > 0.0) << key;
    }
}

TYPED_TEST(FieldsTest, DefaultsAreAllowed)
{
    static const TypeParam owner;
    for (const auto& field : fieldsOf<TypeParam>()) {
        SCOPED_TRACE(field.key);
        std::visit([&](auto member) { expectInside(owner.*member, field.min, field.max); },
                   field.member);
    }
}

}  // namespace
}  // namespace stillbay
