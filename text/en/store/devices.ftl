## devices.rs

give-the-device-a-name-of-1 = Give the device a name of 1 to { $longest_name } characters.
device = device { $id }, { $name }
device-2 = device { $device }
