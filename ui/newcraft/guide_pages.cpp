// SPDX-License-Identifier: MIT
#include "ui/newcraft/guide_pages.h"

#include "core/presets/presets.h"
#include "ui/newcraft/question.h"
#include "ui/widgets/display_text.h"

#include <QCoreApplication>

#include <cmath>
#include <numeric>
#include <optional>

namespace stillbay::ui {
namespace {

// Meanings that no field of the table has.
constexpr const char* kBayWeight = translatable(
    "All that hangs on the tubes, on the kitchen scale: pack, camera, tray, screws and cables.");
constexpr const char* kBayPoints = translatable(
    "How high the tubes hold the bay, from the middle of the centre plate; below is negative.");
constexpr const char* kAlong = translatable("From the front bay points to the rear ones.");
constexpr const char* kAcross = translatable("From the left bay points to the right ones.");

template <class List>
QStringList namesOf(const List& presets)
{
    QStringList names;
    for (const auto& preset : presets)
        names << displayText(nameOf(preset));
    return names;
}

ChoiceQuestion::Answer indexAnswer(std::optional<std::size_t> CraftAnswers::*member)
{
    return {[member](const CraftAnswers& answers) { return answers.*member; },
            [member](CraftAnswers& answers, std::optional<std::size_t> index) {
                answers.*member = index;
            }};
}

ChoiceQuestion::Answer layoutAnswer()
{
    return {[](const CraftAnswers& answers) -> std::optional<std::size_t> {
                if (!answers.layout)
                    return {};
                return static_cast<std::size_t>(*answers.layout);
            },
            [](CraftAnswers& answers, std::optional<std::size_t> index) {
                answers.layout.reset();
                if (index)
                    answers.layout = static_cast<ArmLayout>(*index);
            }};
}

// A pack has its cells: whichever of the two was said last holds.
ChoiceQuestion::Answer packAnswer()
{
    return {[](const CraftAnswers& answers) { return answers.pack; },
            [](CraftAnswers& answers, std::optional<std::size_t> index) {
                answers.pack = index;
                if (index && answers.cells != packPresets()[*index].cells)
                    answers.cells.reset();
            }};
}

double bayMass_g(const Setup& setup)
{
    return std::accumulate(setup.bay.parts.begin(), setup.bay.parts.end(), 0.0,
                           [](double sum, const Part& part) { return sum + part.mass_g; });
}

double spacing_mm(const Setup& setup, std::size_t axis)
{
    return 2 * std::abs(setup.mounts.points.front().bay_mm[axis]);
}

/// Makes the questions of one page after the other.
class Asking {
    Q_DECLARE_TR_FUNCTIONS(NewCraftGuide)

public:
    Asking(CraftAnswers& answers, QObject* parent) : m_answers(answers), m_parent(parent) {}

    GuidePage arms()
    {
        return {
            tr("Layout and arms"),
            tr("How the airframe is built: it decides how the arms ring."),
            {choice(
                 layoutAnswer(), tr("&Layout"),
                 {tr("three arms as a Y"), tr("four arms as an X"), tr("four arms as a plus"),
                  tr("six arms evenly"), tr("eight arms evenly")},
                 tr("How the arms stand, seen from above."),
                 [](const CraftChoices&) { return static_cast<std::size_t>(ArmLayout::FourX); },
                 "airframe.arm"),
             number(
                 &CraftAnswers::arm_length_mm, tr("&Arm length"), lookOf<Arm>("length_mm"),
                 [](const Setup& s) { return s.airframe.arms.front().length_mm; }, "airframe.arm"),
             choice(
                 indexAnswer(&CraftAnswers::armMaterial), tr("Arm ma&terial"),
                 namesOf(armPresets()), tr("What the arms are cut or drawn from."),
                 [](const CraftChoices& c) { return c.armMaterial; }, "airframe.arm.density_kg_m3"),
             number(
                 &CraftAnswers::arm_width_mm, tr("Arm &width"), lookOf<ArmSection>("width_mm"),
                 [](const Setup& s) { return s.airframe.arm.width_mm; }, "airframe.arm.width_mm"),
             number(
                 &CraftAnswers::arm_height_mm, tr("Arm &height"), lookOf<ArmSection>("height_mm"),
                 [](const Setup& s) { return s.airframe.arm.height_mm; },
                 "airframe.arm.height_mm")}};
    }

    GuidePage drive()
    {
        return {tr("Motors, propellers and pack"),
                tr("What excites the craft, and at which throttle."),
                {number(
                     &CraftAnswers::propeller_diameter_in, tr("Propeller &diameter"),
                     lookOf<Propeller>("diameter_in"),
                     [](const Setup& s) { return s.drive.propeller.diameter_in; },
                     "drive.propeller.diameter_in"),
                 number(
                     &CraftAnswers::propeller_pitch_in, tr("&Pitch"), lookOf<Propeller>("pitch_in"),
                     [](const Setup& s) { return s.drive.propeller.pitch_in; },
                     "drive.propeller.pitch_in"),
                 number(
                     &CraftAnswers::blades, tr("B&lades"), lookOf<Propeller>("blades"),
                     [](const Setup& s) { return double(s.drive.propeller.blades); },
                     "drive.propeller.blades"),
                 choice(
                     indexAnswer(&CraftAnswers::motor), tr("M&otors"), namesOf(motorPresets()),
                     tr("The size class of the motors, by the diameter of the stator."),
                     [](const CraftChoices& c) { return c.motor; }, "drive.motor.mass_g"),
                 number(
                     &CraftAnswers::kv_rpm_per_v, tr("K&V"), lookOf<Motor>("kv_rpm_per_v"),
                     [](const Setup& s) { return s.drive.motor.kv_rpm_per_v; },
                     "drive.motor.kv_rpm_per_v"),
                 number(
                     &CraftAnswers::cells, tr("C&ells in series"), lookOf<Battery>("cells"),
                     [](const Setup& s) { return double(s.drive.battery.cells); },
                     "drive.battery.cells"),
                 choice(
                     packAnswer(), tr("P&ack"), namesOf(packPresets()),
                     tr("The pack that flies the craft; it hangs in the bay."),
                     [](const CraftChoices& c) { return c.pack; }, "drive.battery.cells")}};
    }

    GuidePage bay()
    {
        return {tr("What is in the bay"),
                tr("What hangs on the tubes: the pack, the camera and the tray that holds both."),
                {number(&CraftAnswers::bay_mass_g, tr("Bay &weight"),
                        {"g", kBayWeight, kBayMass_g.min, kBayMass_g.max, 10, false}, bayMass_g,
                        "bay.parts"),
                 number(
                     &CraftAnswers::travel_mm, tr("&Free travel"), lookOf<Bay>("travel_mm"),
                     [](const Setup& s) { return s.bay.travel_mm; }, "bay.travel_mm")}};
    }

    GuidePage camera()
    {
        return {
            tr("Camera"),
            tr("What films: it decides how much of the vibration is seen."),
            {choice(
                 indexAnswer(&CraftAnswers::camera), tr("C&amera"), namesOf(cameraPresets()),
                 tr("The kind of camera."), [](const CraftChoices& c) { return c.camera; },
                 "camera.width_px"),
             number(
                 &CraftAnswers::frame_rate_hz, tr("&Frame rate"), lookOf<Camera>("frame_rate_hz"),
                 [](const Setup& s) { return s.camera.frame_rate_hz; }, "camera.frame_rate_hz"),
             number(
                 &CraftAnswers::exposure_ms, tr("&Exposure"), lookOf<Camera>("exposure_ms"),
                 [](const Setup& s) { return s.camera.exposure_ms; }, "camera.exposure_ms"),
             number(
                 &CraftAnswers::tilt_down_deg, tr("&Tilt down"), lookOf<Camera>("tilt_down_deg"),
                 [](const Setup& s) { return s.camera.tilt_down_deg; }, "camera.tilt_down_deg")}};
    }

    GuidePage tubes()
    {
        return {
            tr("Tubes and where they hold"),
            tr("Four tubes, hung level; unless you say otherwise they hold the bay at the "
               "height of its centre of mass, where a push turns it least."),
            {choice(
                 indexAnswer(&CraftAnswers::tube), tr("&Tube"), namesOf(tubePresets()),
                 tr("Silicone tube as sold: outer diameter, bore, hardness."),
                 [](const CraftChoices& c) { return c.tube; }, "tube.outer_diameter_mm"),
             number(
                 &CraftAnswers::free_length_mm, tr("&Free length"),
                 lookOf<Mounts>("free_length_mm"),
                 [](const Setup& s) { return s.mounts.free_length_mm; }, "mounts.free_length_mm"),
             number(
                 &CraftAnswers::stretch, tr("&Stretch"), lookOf<Mounts>("stretch"),
                 [](const Setup& s) { return s.mounts.stretch.value_or(1.0); }, "mounts.stretch"),
             number(
                 &CraftAnswers::mount_height_mm, tr("&Height of the bay points"),
                 {"mm", kBayPoints, -2000, 2000, 1, false},
                 [](const Setup& s) { return s.mounts.points.front().bay_mm[2]; }, "mounts"),
             number(
                 &CraftAnswers::mounts_along_mm, tr("Apart, fore and &aft"), spacing(kAlong),
                 [](const Setup& s) { return spacing_mm(s, 0); }, "mounts"),
             number(
                 &CraftAnswers::mounts_across_mm, tr("Apart, &left and right"), spacing(kAcross),
                 [](const Setup& s) { return spacing_mm(s, 1); }, "mounts")}};
    }

private:
    static NumberLook spacing(const char* meaning)
    {
        return {"mm", meaning, kMountSpacing_mm.min, kMountSpacing_mm.max, 1, false};
    }

    Question* number(NumberQuestion::Answer answer, const QString& label, const NumberLook& look,
                     std::function<double(const Setup&)> used, const char* field)
    {
        return new NumberQuestion(m_answers, answer, label, look, std::move(used), field, m_parent);
    }

    Question* choice(ChoiceQuestion::Answer answer, const QString& label,
                     const QStringList& entries, const QString& meaning,
                     std::function<std::size_t(const CraftChoices&)> used, const char* field)
    {
        return new ChoiceQuestion(m_answers, std::move(answer), label, entries, meaning,
                                  std::move(used), field, m_parent);
    }

    CraftAnswers& m_answers;
    QObject* m_parent;
};

}  // namespace

std::vector<GuidePage> guidePages(CraftAnswers& answers, QObject* parent)
{
    Asking asking(answers, parent);
    return {asking.arms(), asking.drive(), asking.bay(), asking.camera(), asking.tubes()};
}

}  // namespace stillbay::ui
