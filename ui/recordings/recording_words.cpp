// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_words.h"

#include "core/base/units.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QFileInfo>
#include <QObject>
#include <QStringList>

#include <utility>

namespace stillbay::ui {
namespace {

const QStringList& tableEndings()
{
    static const QStringList endings{QStringLiteral("csv"), QStringLiteral("txt"),
                                     QStringLiteral("tsv")};
    return endings;
}

const QStringList& soundEndings()
{
    static const QStringList endings{QStringLiteral("wav"), QStringLiteral("flac"),
                                     QStringLiteral("ogg")};
    return endings;
}

const QStringList& filmEndings()
{
    static const QStringList endings{
        QStringLiteral("mp4"), QStringLiteral("mov"),  QStringLiteral("m4v"), QStringLiteral("mkv"),
        QStringLiteral("avi"), QStringLiteral("webm"), QStringLiteral("mts")};
    return endings;
}

QString endingOf(const QString& path)
{
    return QFileInfo(path).suffix().toLower();
}

}  // namespace

QString kindName(RecordingKind kind)
{
    switch (kind) {
        case RecordingKind::Pluck:
            return QObject::tr("Pluck", "kind of recording");
        case RecordingKind::Tap:
            return QObject::tr("Tap", "kind of recording");
        case RecordingKind::Sweep:
            return QObject::tr("Sweep", "kind of recording");
        case RecordingKind::Sound:
            return QObject::tr("Sound", "kind of recording");
        case RecordingKind::Film:
            return QObject::tr("Film", "kind of recording");
    }
    return {};
}

QString partName(const NamedRecording& named)
{
    const QString from = plainNumber(named.from_s.value_or(0.0), 4);
    if (!named.to_s)
        return named.from_s ? QObject::tr("from %1 s", "part of a recording").arg(from) : QString();
    return QObject::tr("%1 to %2 s", "part of a recording").arg(from, plainNumber(*named.to_s, 4));
}

QString recordingName(const NamedRecording& named)
{
    const QString file = QFileInfo(QString::fromStdString(named.file)).fileName();
    const QString part = partName(named);
    return part.isEmpty() ? file : QObject::tr("%1, %2", "file and its part").arg(file, part);
}

QString recordingUse(const NamedRecording& named)
{
    QStringList use{kindName(named.kind)};
    if (named.kind == RecordingKind::Film) {
        if (const QString part = partName(named); !part.isEmpty())
            use << part;
        if (named.throttle)
            use << QObject::tr("%1 %").arg(plainNumber(kPercent * *named.throttle, 3));
    }
    return use.join(QStringLiteral(", "));
}

QString kindMeaning(RecordingKind kind)
{
    switch (kind) {
        case RecordingKind::Pluck:
            return QObject::tr("The bay plucked on the bench, airframe held, with a sensor on it.");
        case RecordingKind::Tap:
            return QObject::tr("An arm tapped at its tip, with a sensor or a microphone at it.");
        case RecordingKind::Sweep:
            return QObject::tr(
                "The throttle run through, with sensors on airframe and bay, or one of them.");
        case RecordingKind::Sound:
            return QObject::tr("The rotors heard by a microphone.");
        case RecordingKind::Film:
            return QObject::tr("A film taken by the camera in flight.");
    }
    return {};
}

QString roleName(ColumnRole role)
{
    switch (role) {
        case ColumnRole::Unused:
            return QObject::tr("Not used", "role of a column");
        case ColumnRole::Time:
            return QObject::tr("Time", "role of a column");
        case ColumnRole::Acceleration:
            return quantityName(Quantity::Acceleration);
        case ColumnRole::AngularRate:
            return quantityName(Quantity::AngularRate);
        case ColumnRole::Sound:
            return quantityName(Quantity::Sound);
        case ColumnRole::Throttle:
            return quantityName(Quantity::Throttle);
        case ColumnRole::RotorSpeed:
            return quantityName(Quantity::RotorSpeed);
        case ColumnRole::Other:
            return quantityName(Quantity::Other);
    }
    return {};
}

QString quantityName(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Acceleration:
            return QObject::tr("Acceleration");
        case Quantity::AngularRate:
            return QObject::tr("Turn rate");
        case Quantity::Sound:
            return QObject::tr("Sound", "what a column holds");
        case Quantity::Throttle:
            return QObject::tr("Throttle");
        case Quantity::RotorSpeed:
            return QObject::tr("Rotor speed");
        case Quantity::Other:
            return QObject::tr("Something else", "what a column holds");
    }
    return {};
}

QString quantityUnit(Quantity quantity)
{
    switch (quantity) {
        case Quantity::Acceleration:
            return QStringLiteral("m/s²");
        case Quantity::AngularRate:
            return QStringLiteral("rad/s");
        case Quantity::RotorSpeed:
            return QStringLiteral("1/s");
        case Quantity::Sound:
            return QObject::tr("of full scale");
        case Quantity::Throttle:
        case Quantity::Other:
            break;
    }
    return {};
}

QString quantityTitle(Quantity quantity)
{
    const QString unit = quantityUnit(quantity);
    return unit.isEmpty() ? quantityName(quantity)
                          : QObject::tr("%1 (%2)").arg(quantityName(quantity), unit);
}

QString reasonText(const Error& error)
{
    const QString where = displayText(whereText(error));
    const QString what = displayText(error.what);
    return where.isEmpty() ? what : QObject::tr("%1 (at %2)").arg(what, where);
}

bool isRecordingName(const QString& path)
{
    const QString ending = endingOf(path);
    return tableEndings().contains(ending) || soundEndings().contains(ending) ||
           filmEndings().contains(ending);
}

QString recordingFilter()
{
    QStringList patterns;
    for (const QStringList& endings : {tableEndings(), soundEndings(), filmEndings()})
        for (const QString& ending : endings)
            patterns << QStringLiteral("*.") + ending << QStringLiteral("*.") + ending.toUpper();
    return QObject::tr("Recordings (%1)").arg(patterns.join(u' ')) + QStringLiteral(";;") +
           QObject::tr("All files (*)");
}

// A film's ending decides, then a name that says it; else a sound is what is heard, and a table a
// pluck.
RecordingKind likelyKind(const QString& path)
{
    if (filmEndings().contains(endingOf(path)))
        return RecordingKind::Film;
    const QString name = QFileInfo(path).completeBaseName().toLower();
    const std::pair<const char*, RecordingKind> words[] = {
        {"pluck", RecordingKind::Pluck}, {"zupf", RecordingKind::Pluck},
        {"tap", RecordingKind::Tap},     {"klopf", RecordingKind::Tap},
        {"sweep", RecordingKind::Sweep}, {"throttle", RecordingKind::Sweep},
        {"sound", RecordingKind::Sound}};
    for (const auto& [word, kind] : words)
        if (name.contains(QLatin1String(word)))
            return kind;
    return soundEndings().contains(endingOf(path)) ? RecordingKind::Sound : RecordingKind::Pluck;
}

}  // namespace stillbay::ui
