## phone/show.html

good-once = { $minutes ->
    [one] Good once, for 1 more minute.
   *[other] Good once, for { $minutes } more minutes.
  }

## phone/pair.html

pair-this-device-woadstone = Pair this device · Woadstone
pair-this-device = Pair this device
at-the-computer-open-woadstones-page = At the computer, open Woadstone’s page
phone = Phone
and-make-a-code-scan = and make a code. Scan it, or type it here.
code = Code
eight-letters-and-digits-good-once = Eight letters and digits, good once and for five minutes.
what-this-device-is-called = What this device is called
so-that-you-find = So that you find it in the list at the computer.
what-goes-between-this-device = What goes between this device and the computer is not encrypted. Pair only on a network whose users you know.

## phone/show.html

phone-woadstone = Phone · Woadstone
take-photos-and-follow-a-run = Take photos and follow a run on your phone, over the network at home.
on = On.
paired-devices-on-your-network-reach = Paired devices on your network reach Woadstone at
http = http://{ $address }
switch-it-off = Switch it off
pair-a-phone = Pair a phone
scan-this-with-the-phones-camera = Scan this with the phone’s camera and open what it finds. The phone has to be on the same network.
or-open = Or open
http-pair = http://{ $address }/pair
on-the-phone-and-type = on the phone and type
a-code-pairs-one-phone = A code pairs one phone and is good for five minutes.
make-another-code = Make another code
make-a-code = Make a code
see-whether-it-is-paired = See whether it is paired
off = Off.
nothing-but-this-computer-reaches = Nothing but this computer reaches Woadstone.
switch-it = Switch it on
know-this-first = Know this first.
what-goes-between-phone-and-computer = What goes between phone and computer is not encrypted. Whoever is on the same network and means to, can read along, photos too, and could take over a paired phone’s place. Others can’t get in by merely being on the network: they would need a code.
use-it-at-home = Use it at home or in your studio, on a network with a password whose users you know.
dont-use-it-in-a-caf = Don’t use it in a café, a hotel, at a fair, or on any network that is open to guests.
switch-it-off-when-you-are-done = Switch it off when you are done. The computer’s firewall may ask whether to let Woadstone in: only on private networks.
this-computers-address-on-the-network = This computer’s address on the network
as-far-as-it-can-be-told = As far as it can be told from here; the computer’s network settings show it, too.
port = Port
switch-it-on-again-each-time-woadstone = Switch it on again each time Woadstone starts
paired-devices = Paired devices
none-yet = None yet.
list-of-paired-devices = List of paired devices
device = Device
paired = Paired
last-seen = Last seen
let-in-no-more = Let in no more
revoke = Revoke
a-paired-phone-may-look-at-everything = A paired phone may look at everything, note what happens in runs, add and mark photos, and judge pairs by eye. It can’t pair others or switch this on or off.

## phone/network.rs

cant-be-used-choose-this-computers-own = { $wanted } can’t be used: { $error }. Choose this computer’s own address and a free port.
is-no-address-write-four-numbers = “{ $typed }” is no address: write four numbers with points between, such as 192.168.1.20.
is-no-address-of-a-local-network = { $address } is no address of a local network. Those begin with 10, 192.168, 172.16 to 172.31 or 169.254; others may be open to the whole internet.

## pages/phone/code.rs

switch-the-local-network-on-first = Switch the local network on first; a code is of no use without it.

## pages/phone/pair.rs

too-many-codes-were-tried-wait-ten = Too many codes were tried. Wait ten minutes, then make a new code at the computer.
this-code-is-not-good = This code is not good, or not any more: each is good once, for five minutes. Make a new one at the computer.
this-device-is-not-paired = This device is not paired, or was revoked. Pair it at the computer, on its page Phone.
usual-name = Phone

## pages/phone/revoke.rs

say-which-device-the-page-lists-those = Say which device: the page lists those that are paired.

## pages/phone/show.rs

code-to-scan-with-the-phones-camera = Code to scan with the phone’s camera
not-yet = not yet

## pages/phone/switch.rs

the-port-is-a-number-from-0 = The port is a number from 0 to 65535, as a rule { $usual_port }; 0 takes a free one.
