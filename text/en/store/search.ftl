## search/readable.rs

on-of-goods = { $class } on { $fibre }, { $goods } of goods{ $pieces ->
    [1] {""}
   *[other] { " " }in { $pieces } pieces
  }
name-amount = { $name }: { $amount }
after-treatment = { $name }: { $amount }, { $temperature } for { $time }
arms = Arms: { $arms }
which-is = { $line } ({ $name })
arm = Arm { $name }
arm-which-is = Arm { $name }: { $treatment }
step-with = { $step } with { $agent }
loads = Loads: { $loads }
