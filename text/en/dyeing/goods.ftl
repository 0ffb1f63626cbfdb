## goods.rs

typical-piece = typical piece
