// SPDX-License-Identifier: MIT
#pragma once

#include <QGenericPlugin>

/// The door through which Qt loads the driver into the real program.
class DriverPlugin final : public QGenericPlugin {
    Q_OBJECT
    Q_PLUGIN_METADATA(IID QGenericPluginFactoryInterface_iid FILE "driver.json")
public:
    QObject* create(const QString& name, const QString& specification) override;
};
