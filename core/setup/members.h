// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/fields.h"
#include "core/setup/setup.h"

#include <concepts>
#include <string_view>
#include <type_traits>

/// The shape of a setup, told once: which members each struct has, in the order of the file.
/// Reader, writer and validator are visitors with
///   text(key, string, maxBytes)     a string
///   numbers(owner)                  all of fieldsOf<Owner>()
///   choice(key, Enum)               a choice between the words of choiceOf<Enum>()
///   object(key, member)             a struct
///   list(key, vector, CountRange)   a list of structs; left out when empty where its range says so
///   curve(key, ThrottleCurve, CountRange)  a list of pairs of numbers; left out when empty
///   keyed(key, vector, CountRange)  an object of structs, each under its own `key`; left out when
///                                   empty
namespace stillbay {

template <class T, class Struct>
concept Like = std::same_as<std::remove_const_t<T>, Struct>;

/// Structs that hold nothing but numbers.
template <class T>
concept NumbersOnly = Like<T, ArmSection> || Like<T, Arm> || Like<T, Motor> || Like<T, Propeller> ||
    Like<T, Battery> || Like<T, TubeKind> || Like<T, MountPoint> || Like<T, Limits>;

void visitMembers(auto& visitor, NumbersOnly auto& owner)
{
    visitor.numbers(owner);
}

void visitMembers(auto& visitor, Like<Part> auto& part)
{
    visitor.text("name", part.name, kMaxNameBytes);
    visitor.numbers(part);
}

void visitMembers(auto& visitor, Like<Airframe> auto& airframe)
{
    visitor.list("parts", airframe.parts, kPartCount);
    visitor.object("arm", airframe.arm);
    visitor.list("arms", airframe.arms, kArmCount);
}

void visitMembers(auto& visitor, Like<Drive> auto& drive)
{
    visitor.object("motor", drive.motor);
    visitor.object("propeller", drive.propeller);
    visitor.object("battery", drive.battery);
    visitor.numbers(drive);
    visitor.curve("throttle_curve", drive.throttle_curve, kThrottleCurveCount);
}

void visitMembers(auto& visitor, Like<Bay> auto& bay)
{
    visitor.list("parts", bay.parts, kPartCount);
    visitor.numbers(bay);
}

void visitMembers(auto& visitor, Like<Camera> auto& camera)
{
    visitor.numbers(camera);
    visitor.choice("lens", camera.lens);
}

void visitMembers(auto& visitor, Like<Mounts> auto& mounts)
{
    visitor.numbers(mounts);
    visitor.choice("ends", mounts.ends);
    visitor.list("points", mounts.points, kMountPointCount);
}

void visitMembers(auto& visitor, Like<FlightNote> auto& note)
{
    visitor.numbers(note);
    visitor.choice("seen", note.seen);
    visitor.text("note", note.note, kMaxNotesBytes);
}

void visitMembers(auto& visitor, Like<Flight> auto& flight)
{
    visitor.numbers(flight);
    visitor.list("notes", flight.notes, kFlightNoteCount);
}

void visitMembers(auto& visitor, Like<Tune> auto& tune)
{
    visitor.text("name", tune.name, kMaxNameBytes);
    visitor.text("saved", tune.saved, kMaxNameBytes);
    visitor.text("notes", tune.notes, kMaxNotesBytes);
    visitor.object("tube", tune.design.tube);
    visitor.object("mounts", tune.design.mounts);
    visitor.numbers(tune.design);
}

void visitMembers(auto& visitor, Like<Source> auto& source)
{
    visitor.choice("from", source.from);
    visitor.numbers(source);
    visitor.text("note", source.note, kMaxNotesBytes);
    visitor.text("date", source.date, kMaxNameBytes);
}

void visitMembers(auto& visitor, Like<ReadColumn> auto& column)
{
    visitor.text("name", column.name, kMaxNameBytes);
    visitor.choice("role", column.role);
    visitor.text("unit", column.unit, kMaxNameBytes);
}

void visitMembers(auto& visitor, Like<NamedRecording> auto& recording)
{
    visitor.text("file", recording.file, kMaxPathBytes);
    visitor.choice("kind", recording.kind);
    visitor.numbers(recording);
    visitor.text("sensor_axes", recording.sensor_axes, kMaxNameBytes);
    visitor.list("columns", recording.columns, kReadColumnCount);
}

void visitMembers(auto& visitor, Like<Setup> auto& setup)
{
    visitor.text("name", setup.name, kMaxNameBytes);
    visitor.text("notes", setup.notes, kMaxNotesBytes);
    visitor.object("airframe", setup.airframe);
    visitor.object("drive", setup.drive);
    visitor.object("bay", setup.bay);
    visitor.object("camera", setup.camera);
    visitor.object("tube", setup.tube);
    visitor.object("mounts", setup.mounts);
    visitor.object("flight", setup.flight);
    visitor.object("limits", setup.limits);
    visitor.keyed("sources", setup.sources, kSourceCount);
    visitor.list("recordings", setup.recordings, kRecordingCount);
    visitor.list("tunes", setup.tunes, kTuneCount);
}

/// Whether a field is part of this struct as the file shows it. Only mount points have two ways:
/// a hole (drilled), or two angles and perhaps an own stretch (planning).
template <class Owner>
bool isShown(const Field<Owner>&, bool /*drilled*/)
{
    return true;
}

inline bool isShown(const Field<MountPoint>& field, bool drilled)
{
    const std::string_view key = field.key;
    return key == "bay_mm" || key == "free_length_mm" || (key == "anchor_mm") == drilled;
}

}  // namespace stillbay
