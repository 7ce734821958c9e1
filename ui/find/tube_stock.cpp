// SPDX-License-Identifier: MIT
#include "ui/find/tube_stock.h"

#include "ui/document/settings_file.h"
#include "ui/find/tube_fields.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>

#include <algorithm>
#include <optional>

namespace stillbay::ui {
namespace {

const QString kKey = QStringLiteral("find/drawer");
const QString kDamagedKey = QStringLiteral("find/drawer-damaged");
const QString kTicked = QStringLiteral("ticked");

QString keyOf(std::size_t member)
{
    return QString::fromLatin1(stockField(member).key);
}

std::optional<KeptTube> readTube(const QJsonObject& object)
{
    KeptTube kept;
    for (std::size_t k = 0; k < kStockMembers.size(); ++k) {
        const QJsonValue value = object[keyOf(k)];
        if (!value.isDouble())
            return {};
        kept.tube.*kStockMembers[k] = value.toDouble();
    }
    kept.isTicked = object[kTicked].toBool(true);
    return faultOf(kept.tube).isEmpty() ? std::optional(kept) : std::nullopt;
}

}  // namespace

QString faultOf(const StockTube& tube)
{
    for (std::size_t k = 0; k < kStockMembers.size(); ++k) {
        const Field<TubeKind>& field = stockField(k);
        const double value = tube.*kStockMembers[k];
        if (!(value >= field.min && value <= field.max))
            return QCoreApplication::translate("TubeStock", "%1 must be from %2 to %3")
                .arg(displayText(field.label), plainNumber(field.min, kStockDigits),
                     plainNumber(field.max, kStockDigits));
    }
    if (tube.bore_mm >= tube.outer_diameter_mm)
        return QCoreApplication::translate(
                   "TubeStock", "a bore of %1 mm does not fit into an outer diameter of %2 mm")
            .arg(plainNumber(tube.bore_mm, kStockDigits),
                 plainNumber(tube.outer_diameter_mm, kStockDigits));
    return {};
}

TubeStock readTubeStock(const StockTube& first)
{
    QSettings settings;
    if (!settings.contains(kKey))
        return {{{first, true}}, {}};
    const QVariant kept = settings.value(kKey);
    const QByteArray text = kept.toString().toUtf8();
    const QJsonDocument document = QJsonDocument::fromJson(text);
    TubeStock stock;
    bool isWhole = document.isArray();
    const QJsonArray list = document.array();
    for (const auto& entry : list) {
        const auto tube = readTube(entry.toObject());
        const bool isNew =
            tube && std::none_of(stock.tubes.begin(), stock.tubes.end(),
                                 [&](const KeptTube& other) { return other.tube == tube->tube; });
        isWhole = isWhole && tube;
        if (isNew)
            stock.tubes.push_back(*tube);
    }
    if (!isWhole) {
        stock.damagedKey = kDamagedKey;
        settings.setValue(kDamagedKey, kept);  // as it was, be it no text
        (void)writeTubeStock(stock.tubes);     // or it is told anew at the next start
    }
    return stock;
}

Result<void> writeTubeStock(const std::vector<KeptTube>& tubes)
{
    QJsonArray list;
    for (const KeptTube& kept : tubes) {
        QJsonObject object{{kTicked, kept.isTicked}};
        for (std::size_t k = 0; k < kStockMembers.size(); ++k)
            object[keyOf(k)] = kept.tube.*kStockMembers[k];
        list << object;
    }
    return keepSetting(kKey, QString::fromUtf8(QJsonDocument(list).toJson(QJsonDocument::Compact)));
}

}  // namespace stillbay::ui
